//! Checks: what can be wrong with a kit, one file each, one line each in the family slice.
