//! A step as it fits a sheet: the scales that there are, and whether it can be read.

/// How many millimetres of cloth one on paper may stand for.
pub(super) const SCALES: [u32; 20] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 18, 20, 25, 30, 40, 50, 75, 100];

/// How large something on a drawing is at least, in mm on paper, so that it stands beside its words.
const READ: f64 = 20.0;
/// A step as it fits a sheet.
pub(super) struct Drawn {
    pub svg: String,
    pub scale: u32,
    /// How large the largest shape is, in mm on paper.
    pub reach: f64,
}

impl Drawn {
    pub fn is_legible(&self) -> bool {
        self.reach >= READ || self.scale == 1
    }
}
