//! Safety classes of refrigerants.

/// A safety class of ANSI/ASHRAE Standard 34: toxicity A (lower) or B (higher), flammability 1 to 3.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum SafetyClass {
    /// Lower toxicity, no flame propagation.
    A1 = 1,
    /// Lower toxicity, lower flammability, slow flame.
    A2L = 2,
    /// Lower toxicity, flammable.
    A2 = 3,
    /// Lower toxicity, higher flammability.
    A3 = 4,
    /// Higher toxicity, no flame propagation.
    B1 = 5,
    /// Higher toxicity, lower flammability, slow flame.
    B2L = 6,
    /// Higher toxicity, flammable.
    B2 = 7,
    /// Higher toxicity, higher flammability.
    B3 = 8,
}

impl SafetyClass {
    /// Every class, in the order of its number.
    pub const ALL: [Self; 8] =
        [Self::A1, Self::A2L, Self::A2, Self::A3, Self::B1, Self::B2L, Self::B2, Self::B3];

    /// Reads a class from its number; 0 and unknown numbers have none.
    pub const fn from_number(number: u8) -> Option<Self> {
        match number {
            1 => Some(Self::A1),
            2 => Some(Self::A2L),
            3 => Some(Self::A2),
            4 => Some(Self::A3),
            5 => Some(Self::B1),
            6 => Some(Self::B2L),
            7 => Some(Self::B2),
            8 => Some(Self::B3),
            _ => None,
        }
    }
    /// Reads a class from its name as the standard prints it.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|class| class.name() == name)
    }
    /// Names the class as the standard prints it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::A1 => "A1",
            Self::A2L => "A2L",
            Self::A2 => "A2",
            Self::A3 => "A3",
            Self::B1 => "B1",
            Self::B2L => "B2L",
            Self::B2 => "B2",
            Self::B3 => "B3",
        }
    }
    /// Tells whether the refrigerant burns (class 2L, 2 or 3).
    pub const fn is_flammable(self) -> bool {
        !matches!(self, Self::A1 | Self::B1)
    }
    /// Tells whether the refrigerant is of the higher toxicity class B.
    pub const fn is_higher_toxicity(self) -> bool {
        matches!(self, Self::B1 | Self::B2L | Self::B2 | Self::B3)
    }
}
