//! What cloth and notions are made of, as far as it is seen on a drawing.

/// A material that is drawn in a way of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Matter {
    /// Plain cloth, seen as such.
    Cloth,
    /// What lies inside a thing and is not seen from outside.
    Lining,
    /// A soft layer.
    Wadding,
    /// What stiffens the cloth that it is fused or sewn to.
    Interfacing,
    /// A strip round an edge.
    Binding,
    /// Matted fibres, alike on both sides.
    Felt,
    /// A thick layer with cells.
    Foam,
    /// A long pile that runs one way.
    Fur,
    /// Leather, or what is coated to look like it.
    Leather,
    /// A firm woven band: webbing, ribbon, tape.
    Webbing,
    /// A band that stretches.
    Elastic,
    /// Two bands that cling to each other.
    HookLoop,
}

impl Matter {
    /// All of them, as they are written.
    pub const ALL: &'static [(&'static str, Matter)] = &[
        ("cloth", Matter::Cloth),
        ("lining", Matter::Lining),
        ("wadding", Matter::Wadding),
        ("interfacing", Matter::Interfacing),
        ("binding", Matter::Binding),
        ("felt", Matter::Felt),
        ("foam", Matter::Foam),
        ("fur", Matter::Fur),
        ("leather", Matter::Leather),
        ("webbing", Matter::Webbing),
        ("elastic", Matter::Elastic),
        ("hook-and-loop", Matter::HookLoop),
    ];

    /// The material that is written so.
    pub fn parse(word: &str) -> Option<Matter> {
        Matter::ALL.iter().find(|(written, _)| *written == word).map(|(_, matter)| *matter)
    }
}
