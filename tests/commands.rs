//! The commands' exact words, from `tests/cmd/*.trycmd`; `TRYCMD=overwrite` rewrites them.

use std::process::Command;

#[test]
fn commands_say_what_is_written() {
    trycmd::TestCases::new().case("tests/cmd/*.trycmd");
}

#[test]
fn the_folder_of_figures_holds_what_the_last_run_made() {
    let folder = tempfile::tempdir().expect("a folder of our own");
    let home = folder.path().join("pouch");
    let base = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/checks/_base");
    std::fs::create_dir_all(home.join("figures")).expect("a folder");
    for name in ["booklet.yaml", "make.md", "figures/sew.svg"] {
        std::fs::copy(base.join(name), home.join(name)).expect("a file of the base booklet");
    }
    let made = || -> Vec<String> {
        let output = Command::new(env!("CARGO_BIN_EXE_notchbook"))
            .args(["figures", "pouch", "--size", "small"])
            .current_dir(folder.path())
            .output()
            .expect("the program runs");
        assert!(output.status.success(), "{output:?}");
        let made = std::fs::read_dir(folder.path().join("out/pouch/figures/small"));
        let names = made
            .expect("the folder")
            .map(|entry| entry.expect("an entry").file_name());
        let mut names: Vec<String> = names
            .map(|name| name.to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    };
    assert_eq!(made(), ["sew.svg"]);
    // A file of somebody else's is nobody's to take out, not even one that the list names from elsewhere.
    let out = folder.path().join("out/pouch/figures/small");
    std::fs::write(out.join("mine.svg"), "my own").expect("a file of somebody else's");
    let list = folder.path().join("out/pouch/.notchbook-made.json");
    let told = std::fs::read_to_string(&list).expect("the list");
    let entry = |path: &str| {
        format!("\"{path}\": {{\"sha256\": \"\", \"kind\": \"figures\", \"of\": \"small\"}}")
    };
    let more = ["../../pouch/make.md", ".."].map(entry);
    let told = told.replacen(
        "\"files\": {",
        &format!("\"files\": {{ {},", more.join(", ")),
        1,
    );
    std::fs::write(&list, told).expect("the list");
    std::fs::rename(home.join("figures/sew.svg"), home.join("figures/seam.svg"))
        .expect("a new name");
    let steps = std::fs::read_to_string(home.join("make.md")).expect("the steps");
    std::fs::write(home.join("make.md"), steps.replace("sew.svg", "seam.svg")).expect("the steps");
    assert_eq!(made(), ["mine.svg", "seam.svg"]);
    assert!(
        home.join("make.md").is_file(),
        "a file elsewhere is taken out"
    );
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
