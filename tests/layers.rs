//! Imports go down only.
