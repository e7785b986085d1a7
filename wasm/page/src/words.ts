/** The page's words for every name of the contract, in both languages. A missing name is a compile error. */
import type {
  Cause,
  CautionCode,
  Effort,
  FindingKind,
  Measurement,
  MonitorEventKind,
  MonitorState,
  MonitorSampleProblem as SampleProblem,
  Step,
} from "rimewise";
import { names } from "./language.js";

export const CAUSE = names<Cause>()({
  none: ["No fault that costs 5 % or more", "Ninguna falla que cueste 5 % o más"],
  undercharge: ["Undercharge", "Falta de refrigerante"],
  overcharge: ["Overcharge", "Exceso de refrigerante"],
  liquid_line_restriction: ["Liquid-line restriction", "Restricción en la línea de líquido"],
  metering_underfeed: ["Metering device passes too little", "El dispositivo de expansión deja pasar poco"],
  flood_back: ["Liquid floods back", "Retorno de líquido"],
  weak_compressor: ["Weak compressor", "Compresor débil"],
  condenser_airflow: ["Too little air over the condenser", "Poco aire en el condensador"],
  evaporator_airflow: ["Too little air over the evaporator", "Poco aire en el evaporador"],
  non_condensables: ["Air or nitrogen in the circuit", "Aire o nitrógeno en el circuito"],
});

/** What a warning is about: a cause or a reading by its words, anything else by its path. */
export function subject(path: string): string {
  const [section, name] = [path.slice(0, path.lastIndexOf(".")), path.slice(path.lastIndexOf(".") + 1)];
  if (section === "causes") return CAUSE[name] ?? path;
  return MEASUREMENT[name] ?? path;
}

/** What the severity of a cause is a fraction of. */
export const SEVERITY = names<Exclude<Cause, "none">>()({
  undercharge: ["of the charge missing", "de la carga falta"],
  overcharge: ["of the charge too much", "de carga de más"],
  liquid_line_restriction: ["of the flow area lost", "de la sección de paso perdida"],
  metering_underfeed: ["of the flow area lost", "de la sección de paso perdida"],
  flood_back: ["more flow than it should pass", "más flujo de lo debido"],
  weak_compressor: ["of the pumped flow lost", "del flujo bombeado perdido"],
  condenser_airflow: ["of the airflow lost", "del caudal de aire perdido"],
  evaporator_airflow: ["of the airflow lost", "del caudal de aire perdido"],
  non_condensables: ["excess head pressure", "de presión de alta en exceso"],
});

export const MEASUREMENT = names<Measurement>()({
  suction_pressure_kpa: ["Suction pressure", "Presión de succión"],
  evaporator_pressure_kpa: ["Evaporator pressure", "Presión del evaporador"],
  discharge_pressure_kpa: ["Discharge pressure", "Presión de descarga"],
  liquid_pressure_kpa: ["Liquid pressure", "Presión de líquido"],
  evaporator_outlet_c: ["Evaporator outlet pipe", "Tubo a la salida del evaporador"],
  evaporator_inlet_c: ["Evaporator inlet pipe", "Tubo a la entrada del evaporador"],
  condenser_middle_c: ["Condenser, a middle bend", "Condensador, una curva del medio"],
  suction_line_c: ["Suction line at the compressor", "Línea de succión en el compresor"],
  discharge_line_c: ["Discharge line", "Línea de descarga"],
  liquid_line_c: ["Liquid line ahead of the drier", "Línea de líquido antes del filtro"],
  drier_outlet_c: ["Drier outlet pipe", "Tubo a la salida del filtro"],
  space_c: ["Air of the cooled space", "Aire del espacio enfriado"],
  supply_air_c: ["Air off the evaporator", "Aire que sale del evaporador"],
  ambient_c: ["Air onto the condenser", "Aire que entra al condensador"],
  condenser_exhaust_c: ["Air off the condenser", "Aire que sale del condensador"],
  current_a: ["Compressor current", "Corriente del compresor"],
  voltage_v: ["Supply voltage, running", "Tensión de alimentación, en marcha"],
  pump_down_kpa: ["Pump-down: lowest pressure", "Vaciado: presión más baja"],
  pump_down_rise_kpa_per_min: ["Pump-down: rise afterwards", "Vaciado: subida posterior"],
  standing_pressure_kpa: ["Standing pressure", "Presión en reposo"],
  standing_temperature_c: ["Standing temperature", "Temperatura en reposo"],
  winding_run_ohm: ["Winding, common to run", "Devanado, común a marcha"],
  winding_start_ohm: ["Winding, common to start", "Devanado, común a arranque"],
  winding_run_to_start_ohm: ["Winding, run to start", "Devanado, marcha a arranque"],
  winding_to_frame_megohm: ["Winding to frame", "Devanado a carcasa"],
  run_capacitor_uf: ["Run capacitor", "Capacitor de marcha"],
  start_capacitor_uf: ["Start capacitor", "Capacitor de arranque"],
  minutes_running: ["Time since the start", "Tiempo desde el arranque"],
  start_current_a: ["Current at the start", "Corriente de arranque"],
  power_w: ["Compressor power", "Potencia del compresor"],
  space_wet_bulb_c: ["Wet bulb of the cooled space", "Bulbo húmedo del espacio enfriado"],
  winding_c: ["Winding temperature", "Temperatura del devanado"],
  insulation_test_v: ["Insulation test voltage", "Tensión de prueba de aislamiento"],
  terminal_12_ohm: ["Terminals 1 to 2", "Terminales 1 a 2"],
  terminal_23_ohm: ["Terminals 2 to 3", "Terminales 2 a 3"],
  terminal_13_ohm: ["Terminals 1 to 3", "Terminales 1 a 3"],
  running: ["Whether it runs", "Si está en marcha"],
  pump_down_valve: ["Pump-down: valve closed", "Vaciado: válvula cerrada"],
  pump_down_ended_by: ["Pump-down: ended by", "Vaciado: terminó por"],
  line_voltages_v: ["Line voltages", "Tensiones de línea"],
  line_currents_a: ["Line currents", "Corrientes de línea"],
  recovered_kg: ["Recovered into the cylinder", "Recuperado en el cilindro"],
  added_kg: ["Added on this visit", "Agregado en esta visita"],
  starts_per_hour: ["Starts per hour", "Arranques por hora"],
  hours_running: ["Hours running of the last day", "Horas en marcha del último día"],
  start_noise: ["Noise at the start", "Ruido al arrancar"],
  frost_on_compressor: ["Frost or sweat on the compressor", "Escarcha o sudor en el compresor"],
  sight_glass: ["Sight glass", "Visor de líquido"],
  coil_iced: ["Evaporator coil iced over", "Evaporador tapado de hielo"],
  condenser_fan: ["Condenser fan", "Ventilador del condensador"],
  evaporator_fan: ["Evaporator fan", "Ventilador del evaporador"],
  condenser_face: ["Condenser face", "Cara del condensador"],
  frost_line: ["Frost on the coil", "Escarcha en el evaporador"],
  oil_traces: ["Oil traces on joints", "Rastros de aceite en uniones"],
  leak_found: ["Leak found", "Fuga encontrada"],
  calls_for_cooling: ["Control calls for cooling", "El control pide frío"],
  door_closes: ["Door closes and seals", "La puerta cierra y sella"],
  start_sound: ["Sound at the start", "Sonido al arrancar"],
  refrigerant: ["Refrigerant", "Refrigerante"],
  metering: ["Metering device", "Dispositivo de expansión"],
  duty: ["Duty", "Uso"],
  suction_saturation_c: ["Suction saturation", "Saturación de succión"],
  superheat_k: ["Superheat, evaporator", "Sobrecalentamiento, evaporador"],
  compressor_superheat_k: ["Superheat, compressor", "Sobrecalentamiento, compresor"],
  subcooling_k: ["Subcooling", "Subenfriamiento"],
  pressure_ratio: ["Pressure ratio", "Relación de presiones"],
  evaporator_saturation_c: ["Evaporator saturation", "Saturación del evaporador"],
  condensing_c: ["Condensing temperature", "Temperatura de condensación"],
  evaporator_td_k: ["Space air over evaporating", "Aire del espacio sobre evaporación"],
  condenser_td_k: ["Condensing over ambient", "Condensación sobre ambiente"],
  discharge_superheat_k: ["Superheat, discharge", "Sobrecalentamiento, descarga"],
  drier_drop_k: ["Drop across the drier", "Caída en el filtro"],
  supply_air_drop_k: ["Air cooled by", "El aire se enfría"],
  exhaust_air_rise_k: ["Condenser air warmed by", "El aire del condensador sube"],
});

export const EFFORT = names<Effort>()({
  look: ["look or air thermometer", "mirar o termómetro de aire"],
  clamp: ["clamp on a pipe", "pinza en un tubo"],
  meter: ["electrical meter", "multímetro"],
  valve: ["gauge at a fitted port", "manómetro en una toma existente"],
  opens_system: ["opens the circuit or needs a new port", "abre el circuito o pide una toma nueva"],
});

export const FINDING = names<FindingKind>()({
  windings_good: ["Windings agree", "Los devanados concuerdan"],
  open_winding: ["A winding is open", "Un devanado está abierto"],
  overload_open: ["Internal overload is open; let it cool and measure again", "El protector interno está abierto; deje enfriar y mida otra vez"],
  shorted_turns: ["A winding reads low enough for shorted turns", "Un devanado lee tan bajo como espiras en corto"],
  winding_to_frame: ["A winding leaks to the frame", "Un devanado fuga a la carcasa"],
  windings_inconsistent: ["The winding resistances contradict each other; measure again", "Las resistencias se contradicen; mida otra vez"],
  run_capacitor_good: ["Run capacitor within its tolerance", "Capacitor de marcha dentro de tolerancia"],
  run_capacitor_low: ["Run capacitor is low", "Capacitor de marcha bajo"],
  run_capacitor_high: ["Run capacitor is high", "Capacitor de marcha alto"],
  run_capacitor_open: ["Run capacitor is open", "Capacitor de marcha abierto"],
  start_capacitor_good: ["Start capacitor within its tolerance", "Capacitor de arranque dentro de tolerancia"],
  start_capacitor_low: ["Start capacitor is low", "Capacitor de arranque bajo"],
  start_capacitor_high: ["Start capacitor is high", "Capacitor de arranque alto"],
  start_capacitor_open: ["Start capacitor is open", "Capacitor de arranque abierto"],
  low_voltage: ["Supply voltage is low", "Tensión de alimentación baja"],
  high_voltage: ["Supply voltage is high", "Tensión de alimentación alta"],
  voltage_unbalance: ["Line voltages differ too much", "Las tensiones de línea difieren demasiado"],
  current_above_rated: ["Current above the plate", "Corriente sobre la de placa"],
  current_below_expected: ["Current below what the pressures ask for", "Corriente menor que la que piden las presiones"],
  current_normal: ["Current is what the pressures ask for", "Corriente acorde con las presiones"],
  locked_rotor: ["Current stays near locked rotor", "La corriente queda cerca de rotor bloqueado"],
  high_resistance_connection: ["A winding reads too high for any temperature, as a poor connection does", "Un devanado lee demasiado alto, como una mala conexión"],
  current_unbalance: ["Line currents differ too much", "Las corrientes de línea difieren demasiado"],
  insulation_good: ["Insulation to the frame is good", "Aislamiento a carcasa bueno"],
  insulation_doubtful: ["Insulation is between the limits: warm, dry, measure again before anything is condemned", "Aislamiento entre límites: caliente, seque y mida otra vez antes de condenar nada"],
  terminals_ambiguous: ["Start and run are too close for this meter to tell apart", "Arranque y marcha demasiado parecidos para este multímetro"],
  start_current_usual: ["Start current is that of any start", "Corriente de arranque normal"],
  start_current_low: ["Start current is far below locked rotor: a clamp too slow, or a poor connection", "Corriente de arranque muy baja: pinza lenta o mala conexión"],
  start_current_high: ["Start current is above locked rotor: shorted turns, or another motor’s plate", "Corriente de arranque sobre rotor bloqueado: espiras en corto o placa de otro motor"],
  single_phasing: ["One of three phases is missing", "Falta una de las tres fases"],
  start_gear_failed: ["The start gear does not bring the start winding in", "El dispositivo de arranque no conecta el devanado de arranque"],
  no_supply: ["No supply at the motor: controls, contactor or fuse", "No llega tensión al motor: controles, contactor o fusible"],
});

export const CAUTION = names<CautionCode>()({
  pressure: ["Pressure", "Presión"],
  cold_burn: ["Cold burn", "Quemadura por frío"],
  flammable: ["Flammable", "Inflamable"],
  toxic: ["Toxic", "Tóxico"],
  asphyxiation: ["Displaces air", "Desplaza el aire"],
  capacitor: ["Capacitor", "Capacitor"],
  live_terminals: ["Live terminals", "Terminales con tensión"],
  terminal_venting: ["Terminal venting", "Expulsión de terminales"],
  recovery_law: ["Recovery and licence", "Recuperación y licencia"],
  no_vacuum_energise: ["Never energise under vacuum", "Nunca energizar en vacío"],
  no_vacuum_pump_down: ["No pump-down into vacuum", "No vaciar hasta vacío"],
  air_in_circuit: ["Air in the circuit", "Aire en el circuito"],
  blend_charge_liquid: ["Charge blends as liquid", "Cargar mezclas en líquido"],
  keep_safety_controls: ["Keep safety controls", "Conservar los controles de seguridad"],
  hot_surface: ["Hot surfaces", "Superficies calientes"],
});

/** Cautions in Spanish, used until the library delivers its texts in the language asked for. */
export const CAUTION_ES: Readonly<Record<string, string>> = {
  pressure: "El circuito está a presión: protección ocular, mangueras en buen estado, abrir despacio.",
  cold_burn: "El líquido que escapa quema por frío: guantes y protección ocular.",
  flammable: "El refrigerante puede arder: sin fuentes de ignición, ventilar, detector y herramientas aptas.",
  toxic: "El refrigerante es tóxico o se trata como tal: ventilar y protección respiratoria según la norma local.",
  asphyxiation: "El vapor desplaza el aire: ventilar los recintos y no trabajar solo.",
  capacitor: "El capacitor guarda carga: descargar con resistencia y comprobar antes de tocar.",
  live_terminals: "Los terminales tienen tensión: desconectar, bloquear y comprobar ausencia de tensión.",
  terminal_venting: "Un terminal dañado puede salir disparado: tapa puesta al energizar, mantenerse a un lado.",
  recovery_law: "La ley pide recuperar el refrigerante y tener licencia: seguir la norma local.",
  no_vacuum_energise: "Nunca energizar ni probar aislamiento de un motor hermético en vacío.",
  no_vacuum_pump_down: "No todo compresor admite vaciado hasta vacío: no en scroll ni con refrigerante inflamable.",
  air_in_circuit: "Nunca comprimir aire con aceite y refrigerante.",
  blend_charge_liquid: "Las mezclas zeotrópicas se cargan en líquido, estrangulado hacia la succión.",
  keep_safety_controls: "Nunca puentear un control de presión ni otra seguridad para obtener una lectura.",
  hot_surface: "Tubos y carcasa calientes: dejar enfriar o usar guantes.",
};

export const STEP = names<Step>()({
  look: ["Looking and clamping", "Mirar y colocar pinzas"],
  gauges: ["Attaching and removing gauges", "Conectar y retirar manómetros"],
  electrical: ["Measuring at terminals", "Medir en terminales"],
  pump_down: ["Pump-down test", "Prueba de vaciado"],
  charging: ["Adding or removing refrigerant", "Agregar o retirar refrigerante"],
  opens_system: ["Opening the circuit", "Abrir el circuito"],
});

export const STATE = names<MonitorState>()({
  unknown: ["not enough seen yet", "aún no se vio lo suficiente"],
  off: ["off", "parado"],
  starting: ["starting", "arrancando"],
  pulling_down: ["pulling down", "bajando temperatura"],
  steady: ["steady", "estable"],
  unsteady: ["running, not settled", "en marcha, sin estabilizar"],
  pumping_down: ["pumping down", "vaciando"],
  holding: ["holding after the pump-down", "en espera tras el vaciado"],
  defrost: ["defrosting", "descongelando"],
  stopped: ["stopped by its overload, or failed to start", "parado por su protector, o no arrancó"],
});

export const EVENT = names<MonitorEventKind>()({
  start: ["Compressor started", "El compresor arrancó"],
  stop: ["Compressor stopped", "El compresor paró"],
  inrush: ["Start current came down to running", "La corriente de arranque bajó a la de marcha"],
  failed_start: ["The motor did not come up", "El motor no tomó velocidad"],
  overload_cycling: ["The overload opens and closes again and again", "El protector abre y cierra una y otra vez"],
  start_gear_stays_in: ["Start winding or start capacitor stays in", "El devanado o capacitor de arranque queda conectado"],
  migration_likely: ["Long stop with a cold compressor: refrigerant has probably moved into its oil", "Paro largo con compresor frío: probable refrigerante en el aceite"],
  liquid_on_start: ["Liquid on start, and it cleared", "Líquido al arrancar, y se despejó"],
  stays_high: ["Current above the plate and staying there", "Corriente sobre la de placa, y se queda ahí"],
  clean_start: ["Clean start", "Arranque limpio"],
  start_not_told: ["Unusual start; what was measured does not tell in which way", "Arranque inusual; lo medido no dice de qué modo"],
  pulling_down: ["Pulling down", "Bajando temperatura"],
  steady: ["Steady", "Estable"],
  hunting: ["The valve hunts", "La válvula oscila"],
  pump_down: ["Pump-down began", "Comenzó el vaciado"],
  pump_down_lowest: ["Pump-down ended", "Terminó el vaciado"],
  pump_down_rise: ["Rise after the pump-down measured", "Subida tras el vaciado medida"],
  short_cycling: ["Short runs one after the other", "Marchas cortas una tras otra"],
  equalized: ["Pressures are equal", "Presiones igualadas"],
  standing_pressure: ["Standing pressure came to rest", "La presión en reposo se estabilizó"],
  current_rises: ["Current rises while both pressures fall", "La corriente sube mientras ambas presiones bajan"],
  defrost_begins: ["Defrost began", "Comenzó la descongelación"],
  defrost_ends: ["Defrost ended", "Terminó la descongelación"],
  gap: ["Samples were missing", "Faltaron muestras"],
});

export const PROBLEM = names<SampleProblem>()({
  repeated_time: ["the same time twice", "la misma hora dos veces"],
  backward_time: ["a clock that runs backwards", "un reloj que retrocede"],
  nothing_measured: ["nothing that could be used", "nada que pueda usarse"],
  some_unusable: ["some values no machine can show", "valores que ninguna máquina puede mostrar"],
});

/** The figures of events: their words, and the kind of scale they are on. */
export const EVENT_FIGURE = names<never>()({
  minutes_off: ["stood for, min", "parado, min"],
  minutes_running: ["ran for, min", "en marcha, min"],
  start_current_a: ["at the start", "al arrancar"],
  seconds: ["took, s", "duró, s"],
  of_locked_rotor: ["of locked rotor", "de rotor bloqueado"],
  of_rated_load: ["of the plate’s current", "de la corriente de placa"],
  failed_starts: ["failed starts", "arranques fallidos"],
  seconds_between: ["between them, s", "entre ellos, s"],
  lowest_superheat_k: ["lowest superheat", "sobrecalentamiento mínimo"],
  current_over_recovered: ["current over what it came to", "corriente sobre la final"],
  kpa_per_min: ["falls by", "baja"],
  period_s: ["period, s", "período, s"],
  swing_kpa: ["swings by", "oscila"],
  at_limit: ["at its limit", "en su límite"],
  u_kpa_per_min: ["give or take", "más o menos"],
  short_runs: ["short runs", "marchas cortas"],
  seconds_running: ["each, s", "cada una, s"],
  current_percent_per_min: ["current, % per min", "corriente, % por min"],
  suction_percent_per_min: ["suction, % per min", "succión, % por min"],
  coil_c: ["coil", "evaporador"],
  warmest_coil_c: ["warmest coil", "evaporador más caliente"],
  minutes: ["took, min", "duró, min"],
});

/** What is more: levels and jobs of the verdict, complaints, actions, states of the compressor, alarms. */
export const JOB = names<never>()({
  condenser_air: ["Restore the condenser’s air", "Restablecer el aire del condensador"],
  evaporator_air: ["Restore the evaporator’s air", "Restablecer el aire del evaporador"],
  open_circuit: ["Open the circuit: recover, mend, evacuate, weigh in", "Abrir el circuito: recuperar, reparar, vacío, cargar por peso"],
  metering_valve: ["Adjust or replace the metering valve", "Ajustar o cambiar la válvula de expansión"],
  compressor: ["Replace the compressor", "Cambiar el compresor"],
  electrical: ["Electrical repair", "Reparación eléctrica"],
  none: ["Nothing to mend in the circuit", "Nada que reparar en el circuito"],
});

export const FAMILY = names<never>()({
  liquid_feed: ["Liquid feed: a restriction, or a metering device that passes too little", "Alimentación de líquido: restricción, o expansión que deja pasar poco"],
});

export const COMPRESSOR = names<"cleared" | "open" | "failing" | "failed">()({
  cleared: ["cleared", "descartado"],
  open: ["unknown", "sin saber"],
  failing: ["failing", "fallando"],
  failed: ["failed", "dañado"],
});

export const ACTION = names<never>()({
  stop_and_equalise: ["Stop it and let the pressures equalise", "Parar y dejar igualar las presiones"],
  defrost_and_reread: ["Defrost fully, then read again", "Descongelar por completo y leer otra vez"],
  clean_and_reread: ["Clean the condenser, then read again", "Limpiar el condensador y leer otra vez"],
  leak_search: ["Search for the leak", "Buscar la fuga"],
  recover_and_weigh: ["Recover the charge and weigh it", "Recuperar la carga y pesarla"],
  start_test: ["Test the start gear", "Probar el sistema de arranque"],
  let_it_settle: ["Let it settle for 15 minutes, then read again", "Dejar estabilizar 15 minutos y leer otra vez"],
});

/** What a step can turn out to show. */
export const OUTCOME = names<never>()({
  "lower than expected": ["Lower than expected", "Más bajo de lo esperado"],
  "higher than expected": ["Higher than expected", "Más alto de lo esperado"],
  "as expected": ["As expected", "Como se espera"],
  "below saturation": ["Below saturation", "Bajo la saturación"],
  "above saturation": ["Above saturation", "Sobre la saturación"],
  "at saturation": ["At saturation", "En la saturación"],
  fades: ["Fades", "Se apaga"],
  stays: ["Stays", "Sigue"],
  none: ["None", "Ninguno"],
  frost: ["Frost", "Escarcha"],
  "no frost": ["No frost", "Sin escarcha"],
  bubbles: ["Bubbles", "Burbujas"],
  clear: ["Clear", "Claro"],
  iced: ["Iced", "Con hielo"],
  free: ["Free of ice", "Sin hielo"],
  stands: ["Stands", "Parado"],
  slow: ["Slow", "Lento"],
  turns: ["Turns", "Gira"],
  blocked: ["Blocked", "Tapada"],
  dirty: ["Dirty", "Sucia"],
  clean: ["Clean", "Limpia"],
  "part of the coil": ["Part of the coil", "Parte del evaporador"],
  "whole coil": ["Whole coil", "Todo el evaporador"],
  oil: ["Oil", "Aceite"],
  dry: ["Dry", "Seco"],
  found: ["Found", "Encontrada"],
  "none found": ["None found", "No encontrada"],
  "does not call": ["Does not call", "No pide frío"],
  calls: ["Calls", "Pide frío"],
  "does not close": ["Does not close", "No cierra"],
  closes: ["Closes", "Cierra"],
});

export const ALARM = names<never>()({
  switch_off: ["Switch it off", "Apagar la máquina"],
  do_not_energise: ["Do not energise", "No energizar"],
  discharge_too_hot: ["Discharge too hot", "Descarga demasiado caliente"],
  head_pressure_high: ["Head pressure too high", "Presión de alta excesiva"],
  compression_ratio_high: ["Compression ratio too high", "Relación de compresión excesiva"],
  liquid_returning: ["Liquid returns to the compressor", "Líquido vuelve al compresor"],
  vacuum_with_flammable: ["Vacuum with a flammable refrigerant", "Vacío con refrigerante inflamable"],
});

/** Where a reading is taken, for someone who stands before the machine. */
export const WHERE = names<never>()({
  suction_pressure_kpa: ["Low-side gauge at the compressor’s suction port.", "Manómetro de baja en la toma de succión del compresor."],
  suction_line_c: ["Clamp on clean bare pipe, a hand’s width before the compressor, insulated from the room.", "Pinza sobre tubo limpio, a un palmo antes del compresor, aislada del aire."],
  discharge_pressure_kpa: ["High-side gauge at the compressor’s discharge port.", "Manómetro de alta en la toma de descarga del compresor."],
  discharge_line_c: ["Clamp a hand’s width behind the compressor. The pipe is hot.", "Pinza a un palmo después del compresor. El tubo está caliente."],
  liquid_line_c: ["Clamp on the pipe from the condenser, ahead of the drier.", "Pinza en el tubo del condensador, antes del filtro."],
  drier_outlet_c: ["Clamp just behind the drier.", "Pinza justo después del filtro."],
  evaporator_outlet_c: ["Clamp where the pipe leaves the evaporator, at the valve’s bulb if there is one.", "Pinza donde el tubo sale del evaporador, junto al bulbo si lo hay."],
  evaporator_inlet_c: ["Clamp just behind the metering device.", "Pinza justo después del dispositivo de expansión."],
  condenser_middle_c: ["Clamp on a return bend in the middle of the condenser.", "Pinza en una curva del medio del condensador."],
  evaporator_pressure_kpa: ["Gauge at the evaporator outlet, where there is a port.", "Manómetro a la salida del evaporador, si hay toma."],
  liquid_pressure_kpa: ["Gauge at the condenser or receiver outlet, where there is a port.", "Manómetro a la salida del condensador o recibidor, si hay toma."],
  space_c: ["Air thermometer where the air goes onto the evaporator.", "Termómetro donde el aire entra al evaporador."],
  supply_air_c: ["Air thermometer where the air leaves the evaporator.", "Termómetro donde el aire sale del evaporador."],
  ambient_c: ["Air thermometer where the air goes onto the condenser.", "Termómetro donde el aire entra al condensador."],
  condenser_exhaust_c: ["Air thermometer where the air leaves the condenser.", "Termómetro donde el aire sale del condensador."],
  current_a: ["Current clamp around one conductor to the compressor.", "Pinza amperimétrica en un conductor del compresor."],
  voltage_v: ["At the compressor’s supply while it runs. Terminals are live.", "En la alimentación del compresor en marcha. Hay tensión."],
  winding_run_ohm: ["Power off, locked out, proved dead, leads off; common to run.", "Sin tensión, bloqueado y comprobado, cables sueltos; común a marcha."],
  winding_to_frame_megohm: ["Power off; any terminal to bare copper. Never under vacuum.", "Sin tensión; un terminal a cobre limpio. Nunca en vacío."],
  run_capacitor_uf: ["Discharged and off its leads.", "Descargado y desconectado."],
  start_capacitor_uf: ["Discharged and off its leads.", "Descargado y desconectado."],
  standing_pressure_kpa: ["Machine stopped and equalised, one temperature everywhere.", "Máquina parada e igualada, una sola temperatura en todo."],
  pump_down_kpa: ["Only where the maker allows it: close the valve, read the lowest pressure.", "Solo donde el fabricante lo permite: cierre la válvula y lea la presión mínima."],
});

/** The name of a measurement, or the name itself where the page is older than the module. */
export function measurementName(name: string): string {
  return MEASUREMENT[name] ?? name;
}
