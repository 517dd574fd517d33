//! The `wallwise` tool.

fn main() -> std::process::ExitCode {
    wallwise::main()
}
