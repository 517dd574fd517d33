//! The tool itself, from the command line.

mod case;
mod class;
mod difficulty;
mod healing;
mod hostile;
mod judge;
mod key;
mod manners;
mod molars;
mod mutated;
mod package;
mod planted;
mod population;
mod replay;
mod rules;
mod schemas;
mod serve;
mod standard;
mod statements;
mod tool;
mod worked;
