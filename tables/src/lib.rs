//! The property compiler of Rimewise: published equations of state in, compact tables out.
