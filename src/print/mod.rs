//! The press: the only place that names the type-setting engine. Faces, sheets and pages in; PDF, SVG and pictures out.
