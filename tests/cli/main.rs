//! The tool itself, from the command line.

mod case;
mod difficulty;
mod healing;
mod hostile;
mod judge;
mod manners;
mod molars;
mod mutated;
mod population;
mod replay;
mod rules;
mod schemas;
mod serve;
mod tool;
mod worked;
