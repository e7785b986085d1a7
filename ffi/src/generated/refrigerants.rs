//! The built-in refrigerants by name. Written by `cargo run -p rimewise-schema`; do not edit.

#![allow(non_upper_case_globals)]

use crate::refrigerant::RimewiseRefrigerant;
use rimewise::refrigerant::data;

/// R11: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r11: RimewiseRefrigerant = RimewiseRefrigerant(data::R11);
/// R12: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r12: RimewiseRefrigerant = RimewiseRefrigerant(data::R12);
/// R13: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r13: RimewiseRefrigerant = RimewiseRefrigerant(data::R13);
/// R13I1: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r13i1: RimewiseRefrigerant = RimewiseRefrigerant(data::R13I1);
/// R14: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r14: RimewiseRefrigerant = RimewiseRefrigerant(data::R14);
/// R21: a pure fluid, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r21: RimewiseRefrigerant = RimewiseRefrigerant(data::R21);
/// R22: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r22: RimewiseRefrigerant = RimewiseRefrigerant(data::R22);
/// R23: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r23: RimewiseRefrigerant = RimewiseRefrigerant(data::R23);
/// R32: a pure fluid, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r32: RimewiseRefrigerant = RimewiseRefrigerant(data::R32);
/// R40: a pure fluid, safety class B2.
#[unsafe(no_mangle)] pub static rimewise_r40: RimewiseRefrigerant = RimewiseRefrigerant(data::R40);
/// R41: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r41: RimewiseRefrigerant = RimewiseRefrigerant(data::R41);
/// R50: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r50: RimewiseRefrigerant = RimewiseRefrigerant(data::R50);
/// R113: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r113: RimewiseRefrigerant = RimewiseRefrigerant(data::R113);
/// R114: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r114: RimewiseRefrigerant = RimewiseRefrigerant(data::R114);
/// R115: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r115: RimewiseRefrigerant = RimewiseRefrigerant(data::R115);
/// R116: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r116: RimewiseRefrigerant = RimewiseRefrigerant(data::R116);
/// R123: a pure fluid, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r123: RimewiseRefrigerant = RimewiseRefrigerant(data::R123);
/// R124: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r124: RimewiseRefrigerant = RimewiseRefrigerant(data::R124);
/// R125: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r125: RimewiseRefrigerant = RimewiseRefrigerant(data::R125);
/// R134a: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r134a: RimewiseRefrigerant = RimewiseRefrigerant(data::R134A);
/// R141b: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r141b: RimewiseRefrigerant = RimewiseRefrigerant(data::R141B);
/// R142b: a pure fluid, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r142b: RimewiseRefrigerant = RimewiseRefrigerant(data::R142B);
/// R143a: a pure fluid, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r143a: RimewiseRefrigerant = RimewiseRefrigerant(data::R143A);
/// RE143a: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_re143a: RimewiseRefrigerant = RimewiseRefrigerant(data::RE143A);
/// R152a: a pure fluid, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r152a: RimewiseRefrigerant = RimewiseRefrigerant(data::R152A);
/// R161: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r161: RimewiseRefrigerant = RimewiseRefrigerant(data::R161);
/// R170: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r170: RimewiseRefrigerant = RimewiseRefrigerant(data::R170);
/// RE170: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_re170: RimewiseRefrigerant = RimewiseRefrigerant(data::RE170);
/// R218: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r218: RimewiseRefrigerant = RimewiseRefrigerant(data::R218);
/// R227ea: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r227ea: RimewiseRefrigerant = RimewiseRefrigerant(data::R227EA);
/// R236ea: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r236ea: RimewiseRefrigerant = RimewiseRefrigerant(data::R236EA);
/// R236fa: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r236fa: RimewiseRefrigerant = RimewiseRefrigerant(data::R236FA);
/// R245ca: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r245ca: RimewiseRefrigerant = RimewiseRefrigerant(data::R245CA);
/// R245fa: a pure fluid, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r245fa: RimewiseRefrigerant = RimewiseRefrigerant(data::R245FA);
/// RC270: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_rc270: RimewiseRefrigerant = RimewiseRefrigerant(data::RC270);
/// R290: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r290: RimewiseRefrigerant = RimewiseRefrigerant(data::R290);
/// RC318: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_rc318: RimewiseRefrigerant = RimewiseRefrigerant(data::RC318);
/// R365mfc: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r365mfc: RimewiseRefrigerant = RimewiseRefrigerant(data::R365MFC);
/// R400(50/50): a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r400_50_50: RimewiseRefrigerant = RimewiseRefrigerant(data::R400_50_50);
/// R400(60/40): a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r400_60_40: RimewiseRefrigerant = RimewiseRefrigerant(data::R400_60_40);
/// R401A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r401a: RimewiseRefrigerant = RimewiseRefrigerant(data::R401A);
/// R401B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r401b: RimewiseRefrigerant = RimewiseRefrigerant(data::R401B);
/// R401C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r401c: RimewiseRefrigerant = RimewiseRefrigerant(data::R401C);
/// R402A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r402a: RimewiseRefrigerant = RimewiseRefrigerant(data::R402A);
/// R402B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r402b: RimewiseRefrigerant = RimewiseRefrigerant(data::R402B);
/// R403A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r403a: RimewiseRefrigerant = RimewiseRefrigerant(data::R403A);
/// R403B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r403b: RimewiseRefrigerant = RimewiseRefrigerant(data::R403B);
/// R404A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r404a: RimewiseRefrigerant = RimewiseRefrigerant(data::R404A);
/// R405A: a blend, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r405a: RimewiseRefrigerant = RimewiseRefrigerant(data::R405A);
/// R406A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r406a: RimewiseRefrigerant = RimewiseRefrigerant(data::R406A);
/// R407A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407a: RimewiseRefrigerant = RimewiseRefrigerant(data::R407A);
/// R407B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407b: RimewiseRefrigerant = RimewiseRefrigerant(data::R407B);
/// R407C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407c: RimewiseRefrigerant = RimewiseRefrigerant(data::R407C);
/// R407D: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407d: RimewiseRefrigerant = RimewiseRefrigerant(data::R407D);
/// R407E: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407e: RimewiseRefrigerant = RimewiseRefrigerant(data::R407E);
/// R407F: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407f: RimewiseRefrigerant = RimewiseRefrigerant(data::R407F);
/// R407G: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407g: RimewiseRefrigerant = RimewiseRefrigerant(data::R407G);
/// R407H: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407h: RimewiseRefrigerant = RimewiseRefrigerant(data::R407H);
/// R407I: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r407i: RimewiseRefrigerant = RimewiseRefrigerant(data::R407I);
/// R408A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r408a: RimewiseRefrigerant = RimewiseRefrigerant(data::R408A);
/// R409A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r409a: RimewiseRefrigerant = RimewiseRefrigerant(data::R409A);
/// R409B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r409b: RimewiseRefrigerant = RimewiseRefrigerant(data::R409B);
/// R410A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r410a: RimewiseRefrigerant = RimewiseRefrigerant(data::R410A);
/// R410B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r410b: RimewiseRefrigerant = RimewiseRefrigerant(data::R410B);
/// R411A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r411a: RimewiseRefrigerant = RimewiseRefrigerant(data::R411A);
/// R411B: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r411b: RimewiseRefrigerant = RimewiseRefrigerant(data::R411B);
/// R412A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r412a: RimewiseRefrigerant = RimewiseRefrigerant(data::R412A);
/// R413A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r413a: RimewiseRefrigerant = RimewiseRefrigerant(data::R413A);
/// R414A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r414a: RimewiseRefrigerant = RimewiseRefrigerant(data::R414A);
/// R414B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r414b: RimewiseRefrigerant = RimewiseRefrigerant(data::R414B);
/// R415A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r415a: RimewiseRefrigerant = RimewiseRefrigerant(data::R415A);
/// R415B: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r415b: RimewiseRefrigerant = RimewiseRefrigerant(data::R415B);
/// R416A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r416a: RimewiseRefrigerant = RimewiseRefrigerant(data::R416A);
/// R417A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r417a: RimewiseRefrigerant = RimewiseRefrigerant(data::R417A);
/// R417B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r417b: RimewiseRefrigerant = RimewiseRefrigerant(data::R417B);
/// R417C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r417c: RimewiseRefrigerant = RimewiseRefrigerant(data::R417C);
/// R418A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r418a: RimewiseRefrigerant = RimewiseRefrigerant(data::R418A);
/// R419A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r419a: RimewiseRefrigerant = RimewiseRefrigerant(data::R419A);
/// R419B: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r419b: RimewiseRefrigerant = RimewiseRefrigerant(data::R419B);
/// R420A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r420a: RimewiseRefrigerant = RimewiseRefrigerant(data::R420A);
/// R421A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r421a: RimewiseRefrigerant = RimewiseRefrigerant(data::R421A);
/// R421B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r421b: RimewiseRefrigerant = RimewiseRefrigerant(data::R421B);
/// R422A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r422a: RimewiseRefrigerant = RimewiseRefrigerant(data::R422A);
/// R422B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r422b: RimewiseRefrigerant = RimewiseRefrigerant(data::R422B);
/// R422C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r422c: RimewiseRefrigerant = RimewiseRefrigerant(data::R422C);
/// R422D: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r422d: RimewiseRefrigerant = RimewiseRefrigerant(data::R422D);
/// R422E: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r422e: RimewiseRefrigerant = RimewiseRefrigerant(data::R422E);
/// R423A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r423a: RimewiseRefrigerant = RimewiseRefrigerant(data::R423A);
/// R424A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r424a: RimewiseRefrigerant = RimewiseRefrigerant(data::R424A);
/// R425A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r425a: RimewiseRefrigerant = RimewiseRefrigerant(data::R425A);
/// R426A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r426a: RimewiseRefrigerant = RimewiseRefrigerant(data::R426A);
/// R427A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r427a: RimewiseRefrigerant = RimewiseRefrigerant(data::R427A);
/// R427C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r427c: RimewiseRefrigerant = RimewiseRefrigerant(data::R427C);
/// R428A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r428a: RimewiseRefrigerant = RimewiseRefrigerant(data::R428A);
/// R429A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r429a: RimewiseRefrigerant = RimewiseRefrigerant(data::R429A);
/// R430A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r430a: RimewiseRefrigerant = RimewiseRefrigerant(data::R430A);
/// R431A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r431a: RimewiseRefrigerant = RimewiseRefrigerant(data::R431A);
/// R432A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r432a: RimewiseRefrigerant = RimewiseRefrigerant(data::R432A);
/// R433A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r433a: RimewiseRefrigerant = RimewiseRefrigerant(data::R433A);
/// R433B: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r433b: RimewiseRefrigerant = RimewiseRefrigerant(data::R433B);
/// R433C: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r433c: RimewiseRefrigerant = RimewiseRefrigerant(data::R433C);
/// R434A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r434a: RimewiseRefrigerant = RimewiseRefrigerant(data::R434A);
/// R435A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r435a: RimewiseRefrigerant = RimewiseRefrigerant(data::R435A);
/// R436A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r436a: RimewiseRefrigerant = RimewiseRefrigerant(data::R436A);
/// R436B: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r436b: RimewiseRefrigerant = RimewiseRefrigerant(data::R436B);
/// R436C: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r436c: RimewiseRefrigerant = RimewiseRefrigerant(data::R436C);
/// R437A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r437a: RimewiseRefrigerant = RimewiseRefrigerant(data::R437A);
/// R438A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r438a: RimewiseRefrigerant = RimewiseRefrigerant(data::R438A);
/// R439A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r439a: RimewiseRefrigerant = RimewiseRefrigerant(data::R439A);
/// R440A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r440a: RimewiseRefrigerant = RimewiseRefrigerant(data::R440A);
/// R441A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r441a: RimewiseRefrigerant = RimewiseRefrigerant(data::R441A);
/// R442A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r442a: RimewiseRefrigerant = RimewiseRefrigerant(data::R442A);
/// R443A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r443a: RimewiseRefrigerant = RimewiseRefrigerant(data::R443A);
/// R444A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r444a: RimewiseRefrigerant = RimewiseRefrigerant(data::R444A);
/// R444B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r444b: RimewiseRefrigerant = RimewiseRefrigerant(data::R444B);
/// R445A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r445a: RimewiseRefrigerant = RimewiseRefrigerant(data::R445A);
/// R446A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r446a: RimewiseRefrigerant = RimewiseRefrigerant(data::R446A);
/// R447A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r447a: RimewiseRefrigerant = RimewiseRefrigerant(data::R447A);
/// R447B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r447b: RimewiseRefrigerant = RimewiseRefrigerant(data::R447B);
/// R448A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r448a: RimewiseRefrigerant = RimewiseRefrigerant(data::R448A);
/// R448B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r448b: RimewiseRefrigerant = RimewiseRefrigerant(data::R448B);
/// R449A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r449a: RimewiseRefrigerant = RimewiseRefrigerant(data::R449A);
/// R449B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r449b: RimewiseRefrigerant = RimewiseRefrigerant(data::R449B);
/// R449C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r449c: RimewiseRefrigerant = RimewiseRefrigerant(data::R449C);
/// R450A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r450a: RimewiseRefrigerant = RimewiseRefrigerant(data::R450A);
/// R451A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r451a: RimewiseRefrigerant = RimewiseRefrigerant(data::R451A);
/// R451B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r451b: RimewiseRefrigerant = RimewiseRefrigerant(data::R451B);
/// R452A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r452a: RimewiseRefrigerant = RimewiseRefrigerant(data::R452A);
/// R452B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r452b: RimewiseRefrigerant = RimewiseRefrigerant(data::R452B);
/// R452C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r452c: RimewiseRefrigerant = RimewiseRefrigerant(data::R452C);
/// R453A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r453a: RimewiseRefrigerant = RimewiseRefrigerant(data::R453A);
/// R454A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r454a: RimewiseRefrigerant = RimewiseRefrigerant(data::R454A);
/// R454B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r454b: RimewiseRefrigerant = RimewiseRefrigerant(data::R454B);
/// R454C: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r454c: RimewiseRefrigerant = RimewiseRefrigerant(data::R454C);
/// R455A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r455a: RimewiseRefrigerant = RimewiseRefrigerant(data::R455A);
/// R456A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r456a: RimewiseRefrigerant = RimewiseRefrigerant(data::R456A);
/// R457A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r457a: RimewiseRefrigerant = RimewiseRefrigerant(data::R457A);
/// R457B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r457b: RimewiseRefrigerant = RimewiseRefrigerant(data::R457B);
/// R457C: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r457c: RimewiseRefrigerant = RimewiseRefrigerant(data::R457C);
/// R458A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r458a: RimewiseRefrigerant = RimewiseRefrigerant(data::R458A);
/// R459A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r459a: RimewiseRefrigerant = RimewiseRefrigerant(data::R459A);
/// R459B: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r459b: RimewiseRefrigerant = RimewiseRefrigerant(data::R459B);
/// R460A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r460a: RimewiseRefrigerant = RimewiseRefrigerant(data::R460A);
/// R460B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r460b: RimewiseRefrigerant = RimewiseRefrigerant(data::R460B);
/// R460C: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r460c: RimewiseRefrigerant = RimewiseRefrigerant(data::R460C);
/// R461A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r461a: RimewiseRefrigerant = RimewiseRefrigerant(data::R461A);
/// R462A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r462a: RimewiseRefrigerant = RimewiseRefrigerant(data::R462A);
/// R463A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r463a: RimewiseRefrigerant = RimewiseRefrigerant(data::R463A);
/// R464A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r464a: RimewiseRefrigerant = RimewiseRefrigerant(data::R464A);
/// R465A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r465a: RimewiseRefrigerant = RimewiseRefrigerant(data::R465A);
/// R466A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r466a: RimewiseRefrigerant = RimewiseRefrigerant(data::R466A);
/// R467A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r467a: RimewiseRefrigerant = RimewiseRefrigerant(data::R467A);
/// R469A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r469a: RimewiseRefrigerant = RimewiseRefrigerant(data::R469A);
/// R470A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r470a: RimewiseRefrigerant = RimewiseRefrigerant(data::R470A);
/// R470B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r470b: RimewiseRefrigerant = RimewiseRefrigerant(data::R470B);
/// R471A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r471a: RimewiseRefrigerant = RimewiseRefrigerant(data::R471A);
/// R472A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r472a: RimewiseRefrigerant = RimewiseRefrigerant(data::R472A);
/// R472B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r472b: RimewiseRefrigerant = RimewiseRefrigerant(data::R472B);
/// R474A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r474a: RimewiseRefrigerant = RimewiseRefrigerant(data::R474A);
/// R475A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r475a: RimewiseRefrigerant = RimewiseRefrigerant(data::R475A);
/// R476A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r476a: RimewiseRefrigerant = RimewiseRefrigerant(data::R476A);
/// R477A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r477a: RimewiseRefrigerant = RimewiseRefrigerant(data::R477A);
/// R480A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r480a: RimewiseRefrigerant = RimewiseRefrigerant(data::R480A);
/// R500: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r500: RimewiseRefrigerant = RimewiseRefrigerant(data::R500);
/// R501: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r501: RimewiseRefrigerant = RimewiseRefrigerant(data::R501);
/// R502: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r502: RimewiseRefrigerant = RimewiseRefrigerant(data::R502);
/// R503: a blend, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r503: RimewiseRefrigerant = RimewiseRefrigerant(data::R503);
/// R504: a blend, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r504: RimewiseRefrigerant = RimewiseRefrigerant(data::R504);
/// R507A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r507a: RimewiseRefrigerant = RimewiseRefrigerant(data::R507A);
/// R508A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r508a: RimewiseRefrigerant = RimewiseRefrigerant(data::R508A);
/// R508B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r508b: RimewiseRefrigerant = RimewiseRefrigerant(data::R508B);
/// R509A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r509a: RimewiseRefrigerant = RimewiseRefrigerant(data::R509A);
/// R510A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r510a: RimewiseRefrigerant = RimewiseRefrigerant(data::R510A);
/// R511A: a blend, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r511a: RimewiseRefrigerant = RimewiseRefrigerant(data::R511A);
/// R512A: a blend, safety class A2.
#[unsafe(no_mangle)] pub static rimewise_r512a: RimewiseRefrigerant = RimewiseRefrigerant(data::R512A);
/// R513A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r513a: RimewiseRefrigerant = RimewiseRefrigerant(data::R513A);
/// R513B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r513b: RimewiseRefrigerant = RimewiseRefrigerant(data::R513B);
/// R514A: a blend, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r514a: RimewiseRefrigerant = RimewiseRefrigerant(data::R514A);
/// R515A: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r515a: RimewiseRefrigerant = RimewiseRefrigerant(data::R515A);
/// R515B: a blend, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r515b: RimewiseRefrigerant = RimewiseRefrigerant(data::R515B);
/// R516A: a blend, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r516a: RimewiseRefrigerant = RimewiseRefrigerant(data::R516A);
/// R600: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r600: RimewiseRefrigerant = RimewiseRefrigerant(data::R600);
/// R600a: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r600a: RimewiseRefrigerant = RimewiseRefrigerant(data::R600A);
/// R601: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r601: RimewiseRefrigerant = RimewiseRefrigerant(data::R601);
/// R601a: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r601a: RimewiseRefrigerant = RimewiseRefrigerant(data::R601A);
/// R601b: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r601b: RimewiseRefrigerant = RimewiseRefrigerant(data::R601B);
/// R610: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r610: RimewiseRefrigerant = RimewiseRefrigerant(data::R610);
/// R717: a pure fluid, safety class B2L.
#[unsafe(no_mangle)] pub static rimewise_r717: RimewiseRefrigerant = RimewiseRefrigerant(data::R717);
/// R718: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r718: RimewiseRefrigerant = RimewiseRefrigerant(data::R718);
/// R744: a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r744: RimewiseRefrigerant = RimewiseRefrigerant(data::R744);
/// R744A: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r744a: RimewiseRefrigerant = RimewiseRefrigerant(data::R744A);
/// R764: a pure fluid, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r764: RimewiseRefrigerant = RimewiseRefrigerant(data::R764);
/// R1123: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r1123: RimewiseRefrigerant = RimewiseRefrigerant(data::R1123);
/// R1130(E): a pure fluid, safety class B1.
#[unsafe(no_mangle)] pub static rimewise_r1130_e: RimewiseRefrigerant = RimewiseRefrigerant(data::R1130_E);
/// R1132(E): a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r1132_e: RimewiseRefrigerant = RimewiseRefrigerant(data::R1132_E);
/// R1140: a pure fluid, safety class B2.
#[unsafe(no_mangle)] pub static rimewise_r1140: RimewiseRefrigerant = RimewiseRefrigerant(data::R1140);
/// R1150: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r1150: RimewiseRefrigerant = RimewiseRefrigerant(data::R1150);
/// R1224yd(Z): a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r1224yd_z: RimewiseRefrigerant = RimewiseRefrigerant(data::R1224YD_Z);
/// R1233zd(E): a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r1233zd_e: RimewiseRefrigerant = RimewiseRefrigerant(data::R1233ZD_E);
/// R1234yf: a pure fluid, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r1234yf: RimewiseRefrigerant = RimewiseRefrigerant(data::R1234YF);
/// R1234ze(E): a pure fluid, safety class A2L.
#[unsafe(no_mangle)] pub static rimewise_r1234ze_e: RimewiseRefrigerant = RimewiseRefrigerant(data::R1234ZE_E);
/// R1234ze(Z): a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r1234ze_z: RimewiseRefrigerant = RimewiseRefrigerant(data::R1234ZE_Z);
/// R1243zf: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r1243zf: RimewiseRefrigerant = RimewiseRefrigerant(data::R1243ZF);
/// R1270: a pure fluid, safety class A3.
#[unsafe(no_mangle)] pub static rimewise_r1270: RimewiseRefrigerant = RimewiseRefrigerant(data::R1270);
/// R1336mzz(E): a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r1336mzz_e: RimewiseRefrigerant = RimewiseRefrigerant(data::R1336MZZ_E);
/// R1336mzz(Z): a pure fluid, safety class A1.
#[unsafe(no_mangle)] pub static rimewise_r1336mzz_z: RimewiseRefrigerant = RimewiseRefrigerant(data::R1336MZZ_Z);
/// R7146: a pure fluid, safety class not known.
#[unsafe(no_mangle)] pub static rimewise_r7146: RimewiseRefrigerant = RimewiseRefrigerant(data::R7146);
