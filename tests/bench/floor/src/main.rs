//! The floor of the benchmark of `batch`: the csv crate reads the table, its numbers are parsed, and as many
//! columns are written, on one thread. Usage: floor LIMBS.csv COLUMNS > OUT

fn main() {
    let mut args = std::env::args().skip(1);
    let (file, columns) = (args.next().unwrap(), args.next().unwrap().parse::<usize>().unwrap());
    let mut reader = csv::Reader::from_path(file).unwrap();
    let mut writer = csv::Writer::from_writer(std::io::stdout().lock());
    let mut record = csv::ByteRecord::new();
    let mut text = String::new();
    while reader.read_byte_record(&mut record).unwrap() {
        let numbers: [f64; 5] =
            std::array::from_fn(|at| std::str::from_utf8(&record[at + 1]).unwrap().parse().unwrap());
        writer.write_field(&record[0]).unwrap();
        for column in 1..columns {
            text.clear();
            // A figure that was worked out is no round one.
            std::fmt::Write::write_fmt(&mut text, format_args!("{}", numbers[column % 5] / 3.7)).unwrap();
            writer.write_field(&text).unwrap();
        }
        writer.write_record(None::<&[u8]>).unwrap();
    }
    writer.flush().unwrap();
}
