use rimewise_tables::{data::Library, dome, substance::Substance};
use std::path::Path;
fn main() {
    let library = Library::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("data")).unwrap();
    for b in &library.blends {
        let s = Substance::blend(&library, b).unwrap();
        match dome::dome(&s, libm::sqrt(s.t_min * (s.t_max + 130.0))) {
            Ok(d) => println!("{} {:.4} {:.4}", s.designation, d.worst_k, d.worst_quality),
            Err(e) => println!("{} ERR {e}", s.designation),
        }
    }
}
