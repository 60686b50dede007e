//! Formulas of the trade, as functions.
