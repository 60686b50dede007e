//! A value is not of the kind that its key takes.
//!
//! ## Why it matters
//! A date that is no date or a number of notions that is half a number would be printed as it
//! stands, and someone would shop by it.
//!
//! ## Wrong
//! ```yaml
//! date: 1st of March
//! ```
//!
//! ## Right
//! ```yaml
//! date: 2026-03-01
//! ```
//!
//! ## Limits
//! Tells of the form of a value: a list where one value belongs, a colour that is no colour, a name
//! with capitals in it, a rectangle with one side. What a formula comes to is told by
//! `formula-unreadable`, `unit-mismatch` and their neighbours.

use crate::diag::{Check, Group};

/// A value is not of the kind that its key takes.
pub static VALUE_UNREADABLE: Check =
    Check::error("value-unreadable", Group::Facts, include_str!("value_unreadable.rs")).breaking();
