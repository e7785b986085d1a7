//! The built-in refrigerants. Written by `cargo run --release -p rimewise-tables`; do not edit.

pub(crate) mod common;

use super::Refrigerant;

/// R11, trichlorofluoromethane.
pub static R11: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r11.table"));
/// R12, dichlorodifluoromethane.
pub static R12: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r12.table"));
/// R13, chlorotrifluoromethane.
pub static R13: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r13.table"));
/// R13I1, trifluoroiodomethane.
pub static R13I1: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r13i1.table"));
/// R14, tetrafluoromethane.
pub static R14: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r14.table"));
/// R21, dichlorofluoromethane.
pub static R21: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r21.table"));
/// R22, chlorodifluoromethane.
pub static R22: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r22.table"));
/// R23, trifluoromethane.
pub static R23: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r23.table"));
/// R32, difluoromethane.
pub static R32: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r32.table"));
/// R40, methyl chloride.
pub static R40: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r40.table"));
/// R41, fluoromethane.
pub static R41: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r41.table"));
/// R50, methane.
pub static R50: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r50.table"));
/// R113.
pub static R113: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r113.table"));
/// R114.
pub static R114: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r114.table"));
/// R115, chloropentafluoroethane.
pub static R115: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r115.table"));
/// R116, hexafluoroethane.
pub static R116: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r116.table"));
/// R123.
pub static R123: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r123.table"));
/// R124.
pub static R124: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r124.table"));
/// R125, pentafluoroethane.
pub static R125: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r125.table"));
/// R134a, tetrafluoroethane.
pub static R134A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r134a.table"));
/// R141b.
pub static R141B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r141b.table"));
/// R142b.
pub static R142B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r142b.table"));
/// R143a, trifluoroethane.
pub static R143A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r143a.table"));
/// RE143a.
pub static RE143A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("re143a.table"));
/// R152a, difluoroethane.
pub static R152A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r152a.table"));
/// R161, fluoroethane.
pub static R161: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r161.table"));
/// R170, ethane.
pub static R170: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r170.table"));
/// RE170, dimethyl ether.
pub static RE170: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("re170.table"));
/// R218, octafluoropropane.
pub static R218: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r218.table"));
/// R227ea, heptafluoropropane.
pub static R227EA: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r227ea.table"));
/// R236ea.
pub static R236EA: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r236ea.table"));
/// R236fa, hexafluoropropane.
pub static R236FA: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r236fa.table"));
/// R245ca.
pub static R245CA: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r245ca.table"));
/// R245fa, pentafluoropropane.
pub static R245FA: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r245fa.table"));
/// RC270, cyclopropane.
pub static RC270: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("rc270.table"));
/// R290, propane.
pub static R290: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r290.table"));
/// RC318, octafluorocyclobutane.
pub static RC318: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("rc318.table"));
/// R365mfc.
pub static R365MFC: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r365mfc.table"));
/// R400(50/50): R12 50, R114 50 % by mass.
pub static R400_50_50: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r400_50_50.table"));
/// R400(60/40): R12 60, R114 40 % by mass.
pub static R400_60_40: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r400_60_40.table"));
/// R401A: R22 53, R152a 13, R124 34 % by mass.
pub static R401A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r401a.table"));
/// R401B: R22 61, R152a 11, R124 28 % by mass.
pub static R401B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r401b.table"));
/// R401C: R22 33, R152a 15, R124 52 % by mass.
pub static R401C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r401c.table"));
/// R402A: R125 60, R290 2, R22 38 % by mass.
pub static R402A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r402a.table"));
/// R402B: R125 38, R290 2, R22 60 % by mass.
pub static R402B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r402b.table"));
/// R403A: R290 5, R22 75, R218 20 % by mass.
pub static R403A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r403a.table"));
/// R403B: R290 5, R22 56, R218 39 % by mass.
pub static R403B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r403b.table"));
/// R404A: R125 44, R143a 52, R134a 4 % by mass.
pub static R404A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r404a.table"));
/// R405A: R22 45, R152a 7, R142b 5.5, RC318 42.5 % by mass.
pub static R405A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r405a.table"));
/// R406A: R22 55, R600a 4, R142b 41 % by mass.
pub static R406A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r406a.table"));
/// R407A: R32 20, R125 40, R134a 40 % by mass.
pub static R407A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407a.table"));
/// R407B: R32 10, R125 70, R134a 20 % by mass.
pub static R407B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407b.table"));
/// R407C: R32 23, R125 25, R134a 52 % by mass.
pub static R407C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407c.table"));
/// R407D: R32 15, R125 15, R134a 70 % by mass.
pub static R407D: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407d.table"));
/// R407E: R32 25, R125 15, R134a 60 % by mass.
pub static R407E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407e.table"));
/// R407F: R32 30, R125 30, R134a 40 % by mass.
pub static R407F: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407f.table"));
/// R407G: R32 2.5, R125 2.5, R134a 95 % by mass.
pub static R407G: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407g.table"));
/// R407H: R32 32.5, R125 15, R134a 52.5 % by mass.
pub static R407H: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407h.table"));
/// R407I: R32 19.5, R125 8.5, R134a 72 % by mass.
pub static R407I: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r407i.table"));
/// R408A: R125 7, R143a 46, R22 47 % by mass.
pub static R408A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r408a.table"));
/// R409A: R22 60, R124 25, R142b 15 % by mass.
pub static R409A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r409a.table"));
/// R409B: R22 65, R124 25, R142b 10 % by mass.
pub static R409B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r409b.table"));
/// R410A: R32 50, R125 50 % by mass.
pub static R410A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r410a.table"));
/// R410B: R32 45, R125 55 % by mass.
pub static R410B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r410b.table"));
/// R411A: R1270 1.5, R22 87.5, R152a 11 % by mass.
pub static R411A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r411a.table"));
/// R411B: R1270 3, R22 94, R152a 3 % by mass.
pub static R411B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r411b.table"));
/// R412A: R22 70, R218 5, R142b 25 % by mass.
pub static R412A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r412a.table"));
/// R413A: R218 9, R134a 88, R600a 3 % by mass.
pub static R413A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r413a.table"));
/// R414A: R22 51, R124 28.5, R600a 4, R142b 16.5 % by mass.
pub static R414A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r414a.table"));
/// R414B: R22 50, R124 39, R600a 1.5, R142b 9.5 % by mass.
pub static R414B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r414b.table"));
/// R415A: R22 82, R152a 18 % by mass.
pub static R415A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r415a.table"));
/// R415B: R22 25, R152a 75 % by mass.
pub static R415B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r415b.table"));
/// R416A: R134a 59, R124 39.5, R600 1.5 % by mass.
pub static R416A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r416a.table"));
/// R417A: R125 46.6, R134a 50, R600 3.4 % by mass.
pub static R417A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r417a.table"));
/// R417B: R125 79, R134a 18.3, R600 2.7 % by mass.
pub static R417B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r417b.table"));
/// R417C: R125 19.5, R134a 78.8, R600 1.7 % by mass.
pub static R417C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r417c.table"));
/// R418A: R290 1.5, R22 96, R152a 2.5 % by mass.
pub static R418A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r418a.table"));
/// R419A: R125 77, R134a 19, RE170 4 % by mass.
pub static R419A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r419a.table"));
/// R419B: R125 48.5, R134a 48, RE170 3.5 % by mass.
pub static R419B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r419b.table"));
/// R420A: R134a 88, R142b 12 % by mass.
pub static R420A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r420a.table"));
/// R421A: R125 58, R134a 42 % by mass.
pub static R421A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r421a.table"));
/// R421B: R125 85, R134a 15 % by mass.
pub static R421B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r421b.table"));
/// R422A: R125 85.1, R134a 11.5, R600a 3.4 % by mass.
pub static R422A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r422a.table"));
/// R422B: R125 55, R134a 42, R600a 3 % by mass.
pub static R422B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r422b.table"));
/// R422C: R125 82, R134a 15, R600a 3 % by mass.
pub static R422C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r422c.table"));
/// R422D: R125 65.1, R134a 31.5, R600a 3.4 % by mass.
pub static R422D: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r422d.table"));
/// R422E: R125 58, R134a 39.3, R600a 2.7 % by mass.
pub static R422E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r422e.table"));
/// R423A: R134a 52.5, R227ea 47.5 % by mass.
pub static R423A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r423a.table"));
/// R424A: R125 50.5, R134a 47, R600a 0.9, R600 1, R601a 0.6 % by mass.
pub static R424A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r424a.table"));
/// R425A: R32 18.5, R134a 69.5, R227ea 12 % by mass.
pub static R425A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r425a.table"));
/// R426A: R125 5.1, R134a 93, R600 1.3, R601a 0.6 % by mass.
pub static R426A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r426a.table"));
/// R427A: R32 15, R125 25, R143a 10, R134a 50 % by mass.
pub static R427A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r427a.table"));
/// R427C: R32 25, R125 25, R143a 10, R134a 40 % by mass.
pub static R427C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r427c.table"));
/// R428A: R125 77.5, R143a 20, R290 0.6, R600a 1.9 % by mass.
pub static R428A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r428a.table"));
/// R429A: RE170 60, R152a 10, R600a 30 % by mass.
pub static R429A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r429a.table"));
/// R430A: R152a 76, R600a 24 % by mass.
pub static R430A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r430a.table"));
/// R431A: R290 71, R152a 29 % by mass.
pub static R431A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r431a.table"));
/// R432A: R1270 80, RE170 20 % by mass.
pub static R432A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r432a.table"));
/// R433A: R1270 30, R290 70 % by mass.
pub static R433A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r433a.table"));
/// R433B: R1270 5, R290 95 % by mass.
pub static R433B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r433b.table"));
/// R433C: R1270 25, R290 75 % by mass.
pub static R433C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r433c.table"));
/// R434A: R125 63.2, R143a 18, R134a 16, R600a 2.8 % by mass.
pub static R434A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r434a.table"));
/// R435A: RE170 80, R152a 20 % by mass.
pub static R435A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r435a.table"));
/// R436A: R290 56, R600a 44 % by mass.
pub static R436A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r436a.table"));
/// R436B: R290 52, R600a 48 % by mass.
pub static R436B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r436b.table"));
/// R436C: R290 95, R600a 5 % by mass.
pub static R436C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r436c.table"));
/// R437A: R125 19.5, R134a 78.5, R600 1.4, R601 0.6 % by mass.
pub static R437A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r437a.table"));
/// R438A: R32 8.5, R125 45, R134a 44.2, R600 1.7, R601a 0.6 % by mass.
pub static R438A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r438a.table"));
/// R439A: R32 50, R125 47, R600a 3 % by mass.
pub static R439A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r439a.table"));
/// R440A: R290 0.6, R134a 1.6, R152a 97.8 % by mass.
pub static R440A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r440a.table"));
/// R441A: R170 3.1, R290 54.8, R600a 6, R600 36.1 % by mass.
pub static R441A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r441a.table"));
/// R442A: R32 31, R125 31, R134a 30, R152a 3, R227ea 5 % by mass.
pub static R442A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r442a.table"));
/// R443A: R1270 55, R290 40, R600a 5 % by mass.
pub static R443A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r443a.table"));
/// R444A: R32 12, R152a 5, R1234ze(E) 83 % by mass.
pub static R444A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r444a.table"));
/// R444B: R32 41.5, R152a 10, R1234ze(E) 48.5 % by mass.
pub static R444B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r444b.table"));
/// R445A: R744 6, R134a 9, R1234ze(E) 85 % by mass.
pub static R445A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r445a.table"));
/// R446A: R32 68, R1234ze(E) 29, R600 3 % by mass.
pub static R446A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r446a.table"));
/// R447A: R32 68, R125 3.5, R1234ze(E) 28.5 % by mass.
pub static R447A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r447a.table"));
/// R447B: R32 68, R125 8, R1234ze(E) 24 % by mass.
pub static R447B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r447b.table"));
/// R448A: R32 26, R125 26, R1234yf 20, R134a 21, R1234ze(E) 7 % by mass.
pub static R448A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r448a.table"));
/// R448B: R32 21, R125 21, R1234yf 20, R134a 31, R1234ze(E) 7 % by mass.
pub static R448B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r448b.table"));
/// R449A: R32 24.3, R125 24.7, R1234yf 25.3, R134a 25.7 % by mass.
pub static R449A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r449a.table"));
/// R449B: R32 25.2, R125 24.3, R1234yf 23.2, R134a 27.3 % by mass.
pub static R449B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r449b.table"));
/// R449C: R32 20, R125 20, R1234yf 31, R134a 29 % by mass.
pub static R449C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r449c.table"));
/// R450A: R134a 42, R1234ze(E) 58 % by mass.
pub static R450A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r450a.table"));
/// R451A: R1234yf 89.8, R134a 10.2 % by mass.
pub static R451A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r451a.table"));
/// R451B: R1234yf 88.8, R134a 11.2 % by mass.
pub static R451B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r451b.table"));
/// R452A: R32 11, R125 59, R1234yf 30 % by mass.
pub static R452A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r452a.table"));
/// R452B: R32 67, R125 7, R1234yf 26 % by mass.
pub static R452B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r452b.table"));
/// R452C: R32 12.5, R125 61, R1234yf 26.5 % by mass.
pub static R452C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r452c.table"));
/// R453A: R32 20, R125 20, R134a 53.8, R227ea 5, R600 0.6, R601a 0.6 % by mass.
pub static R453A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r453a.table"));
/// R454A: R32 35, R1234yf 65 % by mass.
pub static R454A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r454a.table"));
/// R454B: R32 68.9, R1234yf 31.1 % by mass.
pub static R454B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r454b.table"));
/// R454C: R32 21.5, R1234yf 78.5 % by mass.
pub static R454C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r454c.table"));
/// R455A: R744 3, R32 21.5, R1234yf 75.5 % by mass.
pub static R455A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r455a.table"));
/// R456A: R32 6, R134a 45, R1234ze(E) 49 % by mass.
pub static R456A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r456a.table"));
/// R457A: R32 18, R1234yf 70, R152a 12 % by mass.
pub static R457A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r457a.table"));
/// R457B: R32 35, R1234yf 55, R152a 10 % by mass.
pub static R457B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r457b.table"));
/// R457C: R32 7.5, R1234yf 78, R152a 14.5 % by mass.
pub static R457C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r457c.table"));
/// R458A: R32 20.5, R125 4, R134a 61.4, R227ea 13.5, R236fa 0.6 % by mass.
pub static R458A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r458a.table"));
/// R459A: R32 68, R1234yf 26, R1234ze(E) 6 % by mass.
pub static R459A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r459a.table"));
/// R459B: R32 21, R1234yf 69, R1234ze(E) 10 % by mass.
pub static R459B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r459b.table"));
/// R460A: R32 12, R125 52, R134a 14, R1234ze(E) 22 % by mass.
pub static R460A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r460a.table"));
/// R460B: R32 28, R125 25, R134a 20, R1234ze(E) 27 % by mass.
pub static R460B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r460b.table"));
/// R460C: R32 2.5, R125 2.5, R134a 46, R1234ze(E) 49 % by mass.
pub static R460C: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r460c.table"));
/// R461A: R125 55, R143a 5, R134a 32, R227ea 5, R600a 3 % by mass.
pub static R461A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r461a.table"));
/// R462A: R32 9, R125 42, R143a 2, R134a 44, R600 3 % by mass.
pub static R462A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r462a.table"));
/// R463A: R744 6, R32 36, R125 30, R1234yf 14, R134a 14 % by mass.
pub static R463A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r463a.table"));
/// R464A: R32 27, R125 27, R1234ze(E) 40, R227ea 6 % by mass.
pub static R464A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r464a.table"));
/// R465A: R32 21, R290 7.9, R1234yf 71.1 % by mass.
pub static R465A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r465a.table"));
/// R466A: R32 49, R125 11.5, R13I1 39.5 % by mass.
pub static R466A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r466a.table"));
/// R467A: R32 22, R125 5, R134a 72.4, R600a 0.6 % by mass.
pub static R467A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r467a.table"));
/// R469A: R744 35, R32 32.5, R125 32.5 % by mass.
pub static R469A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r469a.table"));
/// R470A: R744 10, R32 17, R125 19, R134a 7, R1234ze(E) 44, R227ea 3 % by mass.
pub static R470A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r470a.table"));
/// R470B: R744 10, R32 11.5, R125 11.5, R134a 3, R1234ze(E) 57, R227ea 7 % by mass.
pub static R470B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r470b.table"));
/// R471A: R1234ze(E) 78.7, R227ea 4.3, R1336mzz(E) 17 % by mass.
pub static R471A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r471a.table"));
/// R472A: R744 69, R32 12, R134a 19 % by mass.
pub static R472A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r472a.table"));
/// R472B: R744 58, R32 10, R134a 32 % by mass.
pub static R472B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r472b.table"));
/// R474A: R1132(E) 23, R1234yf 77 % by mass.
pub static R474A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r474a.table"));
/// R475A: R1234yf 45, R134a 43, R1234ze(E) 12 % by mass.
pub static R475A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r475a.table"));
/// R476A: R134a 10, R1234ze(E) 78, R1336mzz(E) 12 % by mass.
pub static R476A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r476a.table"));
/// R477A: R1270 84, R600a 16 % by mass.
pub static R477A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r477a.table"));
/// R480A: R744 5, R1234ze(E) 86, R227ea 9 % by mass.
pub static R480A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r480a.table"));
/// R500: R12 73.8, R152a 26.2 % by mass.
pub static R500: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r500.table"));
/// R501: R22 75, R12 25 % by mass.
pub static R501: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r501.table"));
/// R502: R22 48.8, R115 51.2 % by mass.
pub static R502: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r502.table"));
/// R503: R23 40.1, R13 59.9 % by mass.
pub static R503: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r503.table"));
/// R504: R32 48.2, R115 51.8 % by mass.
pub static R504: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r504.table"));
/// R507A: R125 50, R143a 50 % by mass.
pub static R507A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r507a.table"));
/// R508A: R23 39, R116 61 % by mass.
pub static R508A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r508a.table"));
/// R508B: R23 46, R116 54 % by mass.
pub static R508B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r508b.table"));
/// R509A: R22 44, R218 56 % by mass.
pub static R509A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r509a.table"));
/// R510A: RE170 88, R600a 12 % by mass.
pub static R510A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r510a.table"));
/// R511A: R290 95, RE170 5 % by mass.
pub static R511A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r511a.table"));
/// R512A: R134a 5, R152a 95 % by mass.
pub static R512A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r512a.table"));
/// R513A: R1234yf 56, R134a 44 % by mass.
pub static R513A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r513a.table"));
/// R513B: R1234yf 58.5, R134a 41.5 % by mass.
pub static R513B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r513b.table"));
/// R514A: R1336mzz(Z) 74.7, R1130(E) 25.3 % by mass.
pub static R514A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r514a.table"));
/// R515A: R1234ze(E) 88, R227ea 12 % by mass.
pub static R515A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r515a.table"));
/// R515B: R1234ze(E) 91.1, R227ea 8.9 % by mass.
pub static R515B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r515b.table"));
/// R516A: R1234yf 77.5, R134a 8.5, R152a 14 % by mass.
pub static R516A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r516a.table"));
/// R600, butane.
pub static R600: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r600.table"));
/// R600a, isobutane.
pub static R600A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r600a.table"));
/// R601, pentane.
pub static R601: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r601.table"));
/// R601a, isopentane.
pub static R601A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r601a.table"));
/// R601b, neopentane.
pub static R601B: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r601b.table"));
/// R610, diethyl ether.
pub static R610: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r610.table"));
/// R717, ammonia.
pub static R717: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r717.table"));
/// R718, water.
pub static R718: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r718.table"));
/// R744, carbon dioxide.
pub static R744: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r744.table"));
/// R744A, nitrous oxide.
pub static R744A: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r744a.table"));
/// R764, sulfur dioxide.
pub static R764: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r764.table"));
/// R1123, trifluoroethylene.
pub static R1123: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1123.table"));
/// R1130(E).
pub static R1130_E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1130_e.table"));
/// R1132(E).
pub static R1132_E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1132_e.table"));
/// R1140, vinyl chloride.
pub static R1140: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1140.table"));
/// R1150, ethylene.
pub static R1150: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1150.table"));
/// R1224yd(Z).
pub static R1224YD_Z: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1224yd_z.table"));
/// R1233zd(E).
pub static R1233ZD_E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1233zd_e.table"));
/// R1234yf, tetrafluoropropene.
pub static R1234YF: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1234yf.table"));
/// R1234ze(E).
pub static R1234ZE_E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1234ze_e.table"));
/// R1234ze(Z).
pub static R1234ZE_Z: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1234ze_z.table"));
/// R1243zf, trifluoropropene.
pub static R1243ZF: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1243zf.table"));
/// R1270, propylene.
pub static R1270: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1270.table"));
/// R1336mzz(E).
pub static R1336MZZ_E: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1336mzz_e.table"));
/// R1336mzz(Z).
pub static R1336MZZ_Z: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r1336mzz_z.table"));
/// R7146, sulfur hexafluoride.
pub static R7146: Refrigerant<'static> = Refrigerant::built_in(include_bytes!("r7146.table"));

/// Every built-in refrigerant, in the order of the numbers of their designations.
#[rustfmt::skip]
pub static ALL: [&Refrigerant<'static>; 207] = [
    &R11,
    &R12,
    &R13,
    &R13I1,
    &R14,
    &R21,
    &R22,
    &R23,
    &R32,
    &R40,
    &R41,
    &R50,
    &R113,
    &R114,
    &R115,
    &R116,
    &R123,
    &R124,
    &R125,
    &R134A,
    &R141B,
    &R142B,
    &R143A,
    &RE143A,
    &R152A,
    &R161,
    &R170,
    &RE170,
    &R218,
    &R227EA,
    &R236EA,
    &R236FA,
    &R245CA,
    &R245FA,
    &RC270,
    &R290,
    &RC318,
    &R365MFC,
    &R400_50_50,
    &R400_60_40,
    &R401A,
    &R401B,
    &R401C,
    &R402A,
    &R402B,
    &R403A,
    &R403B,
    &R404A,
    &R405A,
    &R406A,
    &R407A,
    &R407B,
    &R407C,
    &R407D,
    &R407E,
    &R407F,
    &R407G,
    &R407H,
    &R407I,
    &R408A,
    &R409A,
    &R409B,
    &R410A,
    &R410B,
    &R411A,
    &R411B,
    &R412A,
    &R413A,
    &R414A,
    &R414B,
    &R415A,
    &R415B,
    &R416A,
    &R417A,
    &R417B,
    &R417C,
    &R418A,
    &R419A,
    &R419B,
    &R420A,
    &R421A,
    &R421B,
    &R422A,
    &R422B,
    &R422C,
    &R422D,
    &R422E,
    &R423A,
    &R424A,
    &R425A,
    &R426A,
    &R427A,
    &R427C,
    &R428A,
    &R429A,
    &R430A,
    &R431A,
    &R432A,
    &R433A,
    &R433B,
    &R433C,
    &R434A,
    &R435A,
    &R436A,
    &R436B,
    &R436C,
    &R437A,
    &R438A,
    &R439A,
    &R440A,
    &R441A,
    &R442A,
    &R443A,
    &R444A,
    &R444B,
    &R445A,
    &R446A,
    &R447A,
    &R447B,
    &R448A,
    &R448B,
    &R449A,
    &R449B,
    &R449C,
    &R450A,
    &R451A,
    &R451B,
    &R452A,
    &R452B,
    &R452C,
    &R453A,
    &R454A,
    &R454B,
    &R454C,
    &R455A,
    &R456A,
    &R457A,
    &R457B,
    &R457C,
    &R458A,
    &R459A,
    &R459B,
    &R460A,
    &R460B,
    &R460C,
    &R461A,
    &R462A,
    &R463A,
    &R464A,
    &R465A,
    &R466A,
    &R467A,
    &R469A,
    &R470A,
    &R470B,
    &R471A,
    &R472A,
    &R472B,
    &R474A,
    &R475A,
    &R476A,
    &R477A,
    &R480A,
    &R500,
    &R501,
    &R502,
    &R503,
    &R504,
    &R507A,
    &R508A,
    &R508B,
    &R509A,
    &R510A,
    &R511A,
    &R512A,
    &R513A,
    &R513B,
    &R514A,
    &R515A,
    &R515B,
    &R516A,
    &R600,
    &R600A,
    &R601,
    &R601A,
    &R601B,
    &R610,
    &R717,
    &R718,
    &R744,
    &R744A,
    &R764,
    &R1123,
    &R1130_E,
    &R1132_E,
    &R1140,
    &R1150,
    &R1224YD_Z,
    &R1233ZD_E,
    &R1234YF,
    &R1234ZE_E,
    &R1234ZE_Z,
    &R1243ZF,
    &R1270,
    &R1336MZZ_E,
    &R1336MZZ_Z,
    &R7146,
];

/// Common names of pure refrigerants.
#[rustfmt::skip]
pub(crate) static NAMES: [(&str, &Refrigerant<'static>); 62] = [
    ("trichlorofluoromethane", &R11),
    ("dichlorodifluoromethane", &R12),
    ("chlorotrifluoromethane", &R13),
    ("trifluoroiodomethane", &R13I1),
    ("tetrafluoromethane", &R14),
    ("dichlorofluoromethane", &R21),
    ("chlorodifluoromethane", &R22),
    ("trifluoromethane", &R23),
    ("fluoroform", &R23),
    ("difluoromethane", &R32),
    ("methyl chloride", &R40),
    ("chloromethane", &R40),
    ("fluoromethane", &R41),
    ("methane", &R50),
    ("chloropentafluoroethane", &R115),
    ("hexafluoroethane", &R116),
    ("pentafluoroethane", &R125),
    ("tetrafluoroethane", &R134A),
    ("trifluoroethane", &R143A),
    ("difluoroethane", &R152A),
    ("fluoroethane", &R161),
    ("ethyl fluoride", &R161),
    ("ethane", &R170),
    ("dimethyl ether", &RE170),
    ("DME", &RE170),
    ("octafluoropropane", &R218),
    ("perfluoropropane", &R218),
    ("heptafluoropropane", &R227EA),
    ("hexafluoropropane", &R236FA),
    ("pentafluoropropane", &R245FA),
    ("cyclopropane", &RC270),
    ("propane", &R290),
    ("octafluorocyclobutane", &RC318),
    ("butane", &R600),
    ("n-butane", &R600),
    ("isobutane", &R600A),
    ("pentane", &R601),
    ("n-pentane", &R601),
    ("isopentane", &R601A),
    ("neopentane", &R601B),
    ("diethyl ether", &R610),
    ("ethyl ether", &R610),
    ("ammonia", &R717),
    ("NH3", &R717),
    ("water", &R718),
    ("H2O", &R718),
    ("carbon dioxide", &R744),
    ("CO2", &R744),
    ("nitrous oxide", &R744A),
    ("N2O", &R744A),
    ("sulfur dioxide", &R764),
    ("SO2", &R764),
    ("trifluoroethylene", &R1123),
    ("vinyl chloride", &R1140),
    ("ethylene", &R1150),
    ("ethene", &R1150),
    ("tetrafluoropropene", &R1234YF),
    ("trifluoropropene", &R1243ZF),
    ("propylene", &R1270),
    ("propene", &R1270),
    ("sulfur hexafluoride", &R7146),
    ("SF6", &R7146),
];
