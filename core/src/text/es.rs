//! Spanish.

use super::{Phrase, StepPhrase, ValueType, table};
use crate::alarm::AlarmCode;
use crate::cause::Cause;
use crate::caution::{CautionCode, Step};
use crate::field::Unit;
use crate::invalid::ErrorCode;
use crate::measurement::{Effort, Measurement};
use crate::motor::finding::FindingKind;
use crate::plan::Context;
use crate::readings::Action;
use crate::warning::WarningKind;

table! { CAUSE: Cause {
    None "nada de importancia",
    Undercharge "falta de carga",
    Overcharge "exceso de carga",
    LiquidLineRestriction "restricción en la línea de líquido",
    MeteringUnderfeed "el dispositivo de expansión deja pasar poco",
    FloodBack "el dispositivo de expansión deja pasar demasiado y vuelve líquido",
    WeakCompressor "compresor débil",
    CondenserAirflow "poco aire en el condensador",
    EvaporatorAirflow "poco aire en el evaporador",
    NonCondensables "aire o nitrógeno en el circuito",
} }

table! { WARNING_KIND: WarningKind {
    ReadsLikeGauge "parece una presión manométrica",
    ContradictsOthers "contradice las demás lecturas: compruébela",
    NotSettled "demasiado poco tiempo desde el arranque para una lectura estable: espere antes de actuar",
    RefrigerantUnknown "no se ha indicado: las presiones no se interpretan",
    OutsideModel "queda fuera del modelo de la máquina con las temperaturas de aire de hoy, así que no se valora nada: \
        compruebe ambas cosas",
    RecordUnused "dice demasiado poco de esta máquina para servir de registro",
    TwoCausesAlike "una de dos causas que explican las lecturas casi igual de bien",
    NotRunning "la máquina está parada: no se juzgan las lecturas de marcha",
    ReadsLikeTheOther "parece intercambiada con otra lectura: compruebe las dos",
    ReadsLikeAnother "las lecturas corresponderían a otro refrigerante: compruebe la placa y lo que se cargó",
} }

table! { ERROR_CODE: ErrorCode {
    NotFinite "no es un número finito",
    OutOfRange "debe estar entre {min} y {max}{unit}",
    OutsideTable "debe estar entre {min} y {max}{unit}, el alcance de la tabla de este refrigerante",
    AboveDischarge "supera la presión de descarga de una máquina en marcha en más que la incertidumbre de los \
        manómetros: puede que estén intercambiadas, o la máquina parada",
    PhasesUnknown "debe ser 1 o 3",
    UnknownCode "es un número que aquí no significa nada",
    NotJson "no es JSON: {given}{known}",
    Duplicate "aparece dos veces",
    UnknownField "no es un campo conocido aquí{known}",
    WrongType "debe ser {known}, no {given}",
    WrongLength "debe ser {known}, no de {given}",
    UnknownName "«{given}» no es ninguno de: {known}",
    UnknownRefrigerant "«{given}» no es un refrigerante conocido aquí{known}",
    UnknownMeasurement "«{given}» no es una lectura, observación o acción conocida aquí",
    TooLarge "no cabe en un número de 32 bits",
    Missing "falta",
    NotUsable "no se puede usar con los demás valores dados",
    TwoPhase "con esa presión es líquido y vapor a la vez; presión y temperatura no fijan el estado",
    OtherPhase "lleva a la otra fase",
    Transcritical "está por encima del punto crítico, donde no hay saturación; lo más alto es {max}{unit}",
    NearCritical "está demasiado cerca del punto crítico de {max}{unit} para conocerse bien",
    BetweenBubbleAndDew "queda entre la burbuja de {min} y el rocío de {max}{unit}, donde esta tabla no tiene nada",
    TooLong "es más largo que cualquier visita: {given}",
    NotWritten "tiene respuesta y no se pudo escribir: {given}",
} }

table! { PHRASE: Phrase {
    AtLeast "debe ser al menos {min}{unit}",
    Nearest "; el más parecido es «{known}»",
    KnownAre "; se conocen {known}",
    OneOf "uno de: {known}",
    InField ", en {known}",
} }

table! { VALUE_TYPE: ValueType {
    Null "null",
    Boolean "true o false",
    Number "un número",
    String "un texto",
    Array "una lista",
    Object "un objeto",
    NumberOrOpen "un número u \"open\"",
    ThreeNumbers "una lista de tres números",
    Name "un nombre",
    Names "una lista de nombres",
    Designation "una designación",
} }

table! { UNIT: Unit {
    None "",
    Ohm "ohm",
    Megohm "megohm",
    Uf "uF",
    V "V",
    A "A",
    Percent "%",
    Kpa "kPa absolutos",
    KpaSpan "kPa",
    KpaPerMin "kPa/min",
    C "degC",
    K "K",
    W "W",
    Hz "Hz",
    Kg "kg",
    Minutes "minutos",
    Hours "horas",
    PerHour "por hora",
    Days "días",
} }

table! { EFFORT: Effort {
    Look "mirar o escuchar",
    Clamp "poner una pinza en un tubo",
    Meter "poner un medidor en bornes",
    Valve "conectar un manómetro o girar una válvula",
    OpensSystem "abrir el circuito",
} }

table! { STEP: Step {
    Look "mirar y poner pinzas",
    Gauges "conectar y retirar manómetros",
    Electrical "medir en bornes eléctricos",
    PumpDown "cerrar válvulas para el vaciado",
    Charging "añadir o retirar refrigerante",
    OpensSystem "abrir el circuito",
} }

table! { FINDING_KIND: FindingKind {
    WindingsGood "los devanados concuerdan entre sí y con la placa",
    OpenWinding "un devanado está abierto",
    OverloadOpen "el protector interno está abierto: deje enfriar el compresor y mida otra vez",
    ShortedTurns "un devanado marca tan poco como con espiras en cortocircuito",
    WindingToFrame "un devanado deriva a masa",
    WindingsInconsistent "las tres resistencias de los devanados se contradicen",
    RunCapacitorGood "el condensador de marcha está dentro de su tolerancia",
    RunCapacitorLow "el condensador de marcha está por debajo de su tolerancia",
    RunCapacitorHigh "el condensador de marcha está por encima de su tolerancia",
    RunCapacitorOpen "el condensador de marcha está abierto",
    StartCapacitorGood "el condensador de arranque está dentro de su tolerancia",
    StartCapacitorLow "el condensador de arranque está por debajo de su tolerancia",
    StartCapacitorHigh "el condensador de arranque está por encima de su tolerancia",
    StartCapacitorOpen "el condensador de arranque está abierto",
    LowVoltage "la tensión de alimentación es baja",
    HighVoltage "la tensión de alimentación es alta",
    VoltageUnbalance "las tres tensiones de línea difieren demasiado",
    CurrentAboveRated "la corriente supera la nominal",
    CurrentBelowExpected "la corriente es menor que la que piden las presiones",
    CurrentNormal "la corriente es la que piden las presiones",
    LockedRotor "la corriente sigue cerca de la de rotor bloqueado: desconecte",
    HighResistanceConnection "un devanado marca más de lo que explica cualquier temperatura, como con una mala conexión",
    CurrentUnbalance "las tres corrientes de línea difieren demasiado",
    InsulationGood "los devanados están bien aislados de la masa",
    InsulationDoubtful "el aislamiento está entre los límites: caliente, seque y mida otra vez antes de condenar nada",
    TerminalsAmbiguous "arranque y marcha están demasiado cerca para distinguirlos con este medidor",
    StartCurrentUsual "el pico de arranque es como la corriente de rotor bloqueado, lo normal en un arranque directo",
    StartCurrentLow "el pico de arranque queda muy por debajo de la corriente de rotor bloqueado",
    StartCurrentHigh "el pico de arranque supera la corriente de rotor bloqueado en más que su tolerancia",
    SinglePhasing "falta una de las tres fases: un fusible, un contacto o un conductor está abierto",
    StartGearFailed "el relé u otro dispositivo de arranque no conecta el devanado de arranque",
    NoSupply "no llega tensión al motor: mandos, contactor o fusible",
} }

table! { CAUTION_CODE: CautionCode {
    Pressure "El circuito está a presión: lleve protección ocular y use mangueras y manómetros aptos para este refrigerante.",
    ColdBurn "El refrigerante líquido que escapa congela piel y ojos: lleve guantes y protección ocular, purgue despacio.",
    Flammable "El refrigerante puede arder: sin fuentes de ignición, ventile, detector encendido, herramientas aptas; \
        solo con la formación que pida la normativa local.",
    Toxic "El refrigerante es de la clase de mayor toxicidad, o su clase no se conoce: ventile, tenga a mano protección \
        respiratoria, siga la normativa local.",
    Asphyxiation "El vapor de refrigerante desplaza el aire, primero en los lugares bajos: ventile antes y durante el \
        trabajo.",
    Capacitor "Un condensador eléctrico guarda su carga tras desconectar: descárguelo con una resistencia y compruebe \
        antes de tocar.",
    LiveTerminals "Tensión de red: desconecte, bloquee, compruebe la ausencia de tensión; medidas en tensión solo por \
        personas cualificadas según las normas locales.",
    TerminalVenting "Un borne dañado puede saltar con aceite y refrigerante: tapa de bornes puesta antes de dar tensión, \
        mida en el extremo de los cables, apártese.",
    RecoveryLaw "El refrigerante se recupera, nunca se suelta; abrir el circuito exige la habilitación que pida la ley \
        local.",
    NoVacuumEnergise "Nunca dé tensión ni haga el ensayo de aislamiento a un motor hermético con el sistema en vacío.",
    NoVacuumPumpDown "No todo compresor admite vacío: nunca un scroll, nunca con refrigerante inflamable; siga el límite \
        de su fabricante y pare ahí.",
    AirInCircuit "No deje entrar aire ni haga funcionar el compresor con aire: aceite, aire y calor pueden explotar; \
        pruebe la presión solo con nitrógeno seco.",
    BlendChargeLiquid "Esta mezcla se carga como líquido por peso, estrangulada hacia la aspiración: el vapor sale de la \
        botella con otra composición.",
    KeepSafetyControls "No puentee nunca un presostato ni otro dispositivo de seguridad para obtener una lectura.",
    HotSurface "La línea de descarga y la carcasa queman: deje que se enfríen o use guantes para la pinza.",
} }

table! { ALARM_CODE: AlarmCode {
    SwitchOff "Desconecte el compresor ya y déjelo desconectado hasta hallar la causa: cada minuto daña el motor.",
    DoNotEnergise "No dé tensión al motor ni rearme su protección: bloquéelo; un borne dañado puede saltar.",
    DischargeTooHot "La línea de descarga está tan caliente que el aceite se descompone en las válvulas: halle la causa \
        antes de que la máquina siga en marcha.",
    HeadPressureHigh "La presión de alta supera lo habitual para este refrigerante: mire primero el aire del condensador, \
        apártese del lado de alta, no puentee nunca su presostato.",
    CompressionRatioHigh "La relación de compresión supera lo que admite una etapa: el compresor se recalienta; suba la \
        presión de aspiración o baje la de alta antes de que siga en marcha.",
    LiquidReturning "Vuelve refrigerante líquido al compresor: arrastra el aceite y rompe válvulas; halle la causa antes \
        de que la máquina siga en marcha.",
    VacuumWithFlammable "El circuito con su refrigerante inflamable está por debajo de la atmósfera: por una fuga entra \
        aire y la mezcla puede explotar; pare ahí, sin fuentes de ignición, ventile.",
} }

table! { STEP_PHRASE: StepPhrase {
    ReplaceMachine "Cambie la máquina: cuesta menos que reparar esta.",
    NotDecided "No está decidido, y nada de lo que se puede medir aquí lo decidiría: no cambie nada por esto.",
    LeaveAlone "Deje en paz el circuito frigorífico.",
    FitValve "Monte una válvula de servicio de aspiración, vacíe contra ella y lea el límite; se abre el circuito.",
    LookAtMachine "Mire la máquina en conjunto.",
    ReadIt "Léalo.",
    MendControls "Los mandos no piden frío: averigüe por qué antes que nada.",
    MendDoor "Repare puerta y junta, deje bajar la temperatura y lea otra vez.",
    MendFound "Repare lo hallado.",
    ReplaceMotor "El motor no debe funcionar: cambie el compresor.",
} }

table! { MEASURE: Measurement {
    SuctionPressure "Conecte el manómetro de baja y lea la presión de aspiración.",
    EvaporatorPressure "Lea la presión a la salida del evaporador.",
    DischargePressure "Conecte el manómetro de alta y lea la presión de descarga.",
    LiquidPressure "Lea la presión en la línea de líquido.",
    EvaporatorOutlet "Ponga la pinza en el tubo a la salida del evaporador, aislada.",
    SuctionLine "Ponga la pinza en la línea de aspiración, a un palmo del compresor, aislada.",
    DischargeLine "Ponga la pinza en la línea de descarga, a un palmo del compresor.",
    LiquidLine "Ponga la pinza en la línea de líquido antes del filtro.",
    DrierOutlet "Ponga la pinza en el tubo después del filtro.",
    EvaporatorInlet "Ponga la pinza en el tubo justo después del dispositivo de expansión: vale por la temperatura de evaporación.",
    CondenserMiddle "Ponga la pinza en una curva a mitad del condensador: vale por la temperatura de condensación.",
    Space "Lea el aire que entra al evaporador.",
    SupplyAir "Lea el aire que sale del evaporador.",
    Ambient "Lea el aire que entra al condensador, fuera de su salida.",
    CondenserExhaust "Lea el aire que sale del condensador.",
    Current "Mida con la pinza la corriente de un cable del compresor.",
    Power "Lea la potencia del compresor.",
    Voltage "Lea la tensión de alimentación del compresor.",
    PumpDown "Cierre la válvula, deje que el compresor vacíe hasta su límite, lea la presión y su subida.",
    WindingRun "Desconecte, bloquee, lea el devanado de marcha: común a marcha.",
    WindingStart "Desconecte, bloquee, lea el devanado de arranque: común a arranque.",
    WindingRunToStart "Desconecte, bloquee, lea de marcha a arranque.",
    WindingToFrame "Desconecte, bloquee, ensaye el aislamiento de los devanados a masa.",
    RunCapacitor "Desconecte, descargue el condensador de marcha con una resistencia, mídalo.",
    StartCapacitor "Desconecte, descargue el condensador de arranque con una resistencia, mídalo.",
    StartNoise "Pare la máquina, deje que arranque de nuevo y escuche los primeros minutos.",
    FrostOnCompressor "Mire si el compresor está cubierto de escarcha o agua.",
    SightGlass "Mire la mirilla; que no la haya también es respuesta.",
    CoilIced "Mire si la batería está cubierta de hielo.",
    CondenserFan "Mire si el ventilador del condensador gira como debe.",
    EvaporatorFan "Mire si el ventilador del evaporador gira como debe.",
    CondenserFace "Mire la cara del condensador: limpia, sucia, tapada.",
    FrostLine "Mire hasta dónde cubre la escarcha o el agua el evaporador.",
    OilTraces "Busque aceite en uniones, aletas y suelo.",
    CallsForCooling "Mire si el termostato y los mandos piden frío.",
    DoorCloses "Mire si la puerta cierra y su junta ajusta.",
} }

table! { ACT: Action {
    StopAndEqualise "Desconecte, deje que las presiones se igualen y la máquina tome una sola temperatura; lea ambas.",
    DefrostAndReread "Descongele la batería, deje estabilizar la máquina y lea otra vez.",
    CleanAndReread "Limpie el condensador, deje estabilizar la máquina y lea otra vez.",
    LeakSearch "Busque una fuga en uniones, válvulas y batería.",
    RecoverAndWeigh "Recupere toda la carga y pese lo que sale; se abre el circuito.",
    StartTest "Conecte con la tapa de bornes puesta, apártese y escuche el arranque.",
    LetItSettle "Deje que se estabilice y lea otra vez.",
} }

table! { ASK: Context {
    Refrigerant "Lea el refrigerante en la placa: sin él ninguna presión dice nada.",
    Metering "Mire cómo se alimenta: capilar, orificio, válvula termostática o electrónica.",
    Duty "Diga para qué es: congelador, refrigerador, aire acondicionado.",
} }

table! { REMEDY: Cause {
    None "Deje en paz el circuito frigorífico.",
    Undercharge "Recupere, busque y repare la fuga, haga vacío, cargue por peso.",
    Overcharge "Recupere, haga vacío, cargue por peso.",
    LiquidLineRestriction "Recupere, cambie el filtro, haga vacío, cargue por peso.",
    MeteringUnderfeed "Recupere, cambie el dispositivo de expansión y el filtro, haga vacío, cargue por peso.",
    FloodBack "Ajuste el recalentamiento de la válvula y revise su bulbo; con capilar, cámbielo y cargue por peso.",
    WeakCompressor "Cambie el compresor y el filtro, haga vacío, cargue por peso.",
    CondenserAirflow "Devuelva el aire al condensador: limpie la cara, revise el ventilador y su paso.",
    EvaporatorAirflow "Devuelva el aire al evaporador: descongele o limpie la batería, revise el ventilador y el desescarche.",
    NonCondensables "Recupere, haga un vacío profundo que se mantenga, cargue por peso.",
} }

table! { MEND: FindingKind {
    RunCapacitorLow "Cambie el condensador de marcha por uno del valor de la placa.",
    RunCapacitorHigh "Cambie el condensador de marcha por uno del valor de la placa.",
    RunCapacitorOpen "Cambie el condensador de marcha por uno del valor de la placa.",
    StartCapacitorLow "Cambie el condensador de arranque por uno del valor de la placa.",
    StartCapacitorHigh "Cambie el condensador de arranque por uno del valor de la placa.",
    StartCapacitorOpen "Cambie el condensador de arranque por uno del valor de la placa.",
    LowVoltage "Haga corregir la alimentación antes de que el motor funcione.",
    HighVoltage "Haga corregir la alimentación antes de que el motor funcione.",
    VoltageUnbalance "Haga corregir la alimentación antes de que el motor funcione.",
    SinglePhasing "Haga corregir la alimentación antes de que el motor funcione.",
    NoSupply "Busque dónde se corta la alimentación: mandos, contactor, fusible.",
    StartGearFailed "Cambie el relé u otro dispositivo de arranque.",
    HighResistanceConnection "Busque la mala conexión y arréglela.",
    CurrentUnbalance "Busque la mala conexión y arréglela.",
    OverloadOpen "Deje enfriar el motor hasta que cierre su protector y lea otra vez los devanados.",
} }
