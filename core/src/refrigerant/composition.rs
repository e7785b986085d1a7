//! What a refrigerant is made of.

use super::{Refrigerant, table};

/// One component of a refrigerant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Component<'a> {
    /// Designation of the component, such as `R32`.
    pub name: &'a str,
    /// Mass fraction of the component, 0 to 1.
    pub mass_fraction: f32,
}

impl<'a> Refrigerant<'a> {
    /// Lists the components with their mass fractions; a pure fluid has one.
    pub fn composition(&self) -> Composition<'a> {
        Composition { rest: self.parts.components }
    }
}

/// Walks over the components of a refrigerant.
#[derive(Clone, Copy, Debug)]
pub struct Composition<'a> {
    rest: &'a [u8],
}

impl<'a> Iterator for Composition<'a> {
    type Item = Component<'a>;
    fn next(&mut self) -> Option<Component<'a>> {
        let (name, mass_fraction, rest) = table::component(self.rest)?;
        self.rest = rest;
        Some(Component { name, mass_fraction })
    }
}
