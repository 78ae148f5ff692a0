//! The layers of a film on a grid.

/// Film by cells, row by row, µm.
#[derive(Debug, Clone, PartialEq)]
pub struct Layers {
    /// Cells of a row.
    pub columns: usize,
    /// All that was laid.
    pub laid: Vec<f32>,
    /// What of it landed dry.
    pub dry: Vec<f32>,
    /// What is still wet, as it is kept.
    pub wet: Vec<f32>,
    /// The wettest that each cell ever was.
    pub wettest: Vec<f32>,
}

impl Layers {
    /// A bare face.
    #[must_use]
    pub fn bare(columns: usize, rows: usize) -> Self {
        let none = || vec![0.0; columns * rows];
        Self { columns, laid: none(), dry: none(), wet: none(), wettest: none() }
    }
}
