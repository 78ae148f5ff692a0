//! The screens.
