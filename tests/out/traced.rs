//! What a build of a stranger's booklet asks of the system: nothing of the net, nothing to read but the booklet and
//! libraries, nothing to write but below `out`.

use super::shop::{Shop, has_tracer};

#[cfg(target_os = "linux")]
#[test]
fn a_build_reads_its_folder_and_writes_below_out() {
    if !has_tracer("what a build asks of the system was not looked at") {
        return;
    }
    let shop = Shop::open();
    let log = tempfile::NamedTempFile::new().expect("a file");
    let calls = "trace=openat,open,creat,socket,connect,bind,execve,rename,renameat,renameat2,unlink,unlinkat,mkdir,link,linkat,symlink,symlinkat,rmdir,truncate,chmod,fchmodat";
    let into = log.path().to_str().expect("a text");
    let mut command = shop.traced(&["-y", "-s", "500", "-e", calls, "-o", into]);
    let output = command.output().expect("strace starts");
    assert!(output.status.success(), "{output:?}");
    let home = shop
        .path("")
        .canonicalize()
        .expect("the folder")
        .display()
        .to_string();
    let told = std::fs::read_to_string(log.path()).expect("what was traced");
    let (mut reads, mut writes) = (0, 0);
    for line in told
        .lines()
        .filter(|line| !line.contains("ENOENT") && line.contains('('))
    {
        let line = line
            .split_once(' ')
            .map_or(line, |(_, line)| line.trim_start());
        assert!(
            !line.starts_with("socket")
                && !line.starts_with("connect")
                && !line.starts_with("bind"),
            "{line}"
        );
        if line.starts_with("execve") {
            assert!(line.contains("notchbook"), "{line}");
            continue;
        }
        let Some(path) = line.split('"').nth(1) else {
            continue;
        };
        let place = if path.starts_with('/') {
            path.to_owned()
        } else {
            format!("{home}/{path}")
        };
        let changes = !line.starts_with("open")
            || ["O_WRONLY", "O_RDWR", "O_CREAT"]
                .iter()
                .any(|flag| line.contains(flag));
        if changes {
            writes += 1;
            // Below a folder that was opened, a name alone is told; the folder stands before it.
            let below = line
                .split('<')
                .nth(1)
                .and_then(|rest| rest.split('>').next())
                .unwrap_or_default();
            let inside = |place: &str| place.starts_with(&format!("{home}/out"));
            assert!(inside(&place) || inside(below), "{line}");
        } else {
            reads += 1;
            let system = [
                "/lib",
                "/usr/lib",
                "/etc/ld.so",
                "/proc/",
                "/sys/fs/cgroup",
                "/sys/devices/system/cpu",
                "/dev/",
            ];
            let fine =
                place.starts_with(&home) || system.iter().any(|known| place.starts_with(known));
            assert!(fine, "{line}");
        }
    }
    assert!(
        reads > 3 && writes > 6,
        "{reads} reads and {writes} writes: {told}"
    );
}
