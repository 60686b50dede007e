//! The commands' exact words, from `tests/cmd/*.trycmd`; `TRYCMD=overwrite` rewrites them.

use std::process::Command;

#[test]
fn commands_say_what_is_written() {
    trycmd::TestCases::new().case("tests/cmd/*.trycmd");
}

#[test]
fn every_shell_gets_its_completions() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let output = Command::new(env!("CARGO_BIN_EXE_notchbook"))
            .args(["completions", shell])
            .output()
            .expect("the program runs");
        assert!(output.status.success(), "{shell}: {output:?}");
        let script = String::from_utf8(output.stdout).expect("a script is text");
        assert!(
            script.contains("notchbook") && script.contains("explain"),
            "{shell}: {script}"
        );
        assert!(
            output.stderr.is_empty(),
            "{shell}: {}",
            String::from_utf8_lossy(&output.stderr)
        );
    }
}
