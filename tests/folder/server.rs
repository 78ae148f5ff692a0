//! Real servers, started for a test on a free port with a folder and a configuration of their own.

use std::fs;
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::os::unix::fs::{MetadataExt, PermissionsExt, chown};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::thread;
use std::time::Duration;

/// User and password that the servers know.
pub(crate) const USER: &str = "shop";
pub(crate) const PASSWORD: &str = "spruce and maple";
/// The user without rights on Debian.
const NOBODY: u32 = 65_534;
/// Bytes that a request may send: more is answered with 413. A round number of KiB, as lighttpd counts.
pub(crate) const BODY_MOST: usize = 256 * 1024;
static NEXT: AtomicU32 = AtomicU32::new(0);

/// Which server.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// Apache httpd with mod_dav and mod_dav_fs.
    Apache,
    /// lighttpd with mod_webdav.
    Lighttpd,
}

/// A running server; it ends with the value.
#[derive(Debug)]
pub(crate) struct Server {
    pub(crate) address: SocketAddr,
    home: PathBuf,
    child: Child,
}

impl Server {
    pub(crate) fn start(kind: Kind) -> Self {
        let number = NEXT.fetch_add(1, Ordering::Relaxed);
        let home = std::env::temp_dir().join(format!("stepboard-dav-{}-{number}", std::process::id()));
        fs::create_dir_all(home.join("root/dav")).expect("a folder of its own");
        let address = free();
        let root = fs::metadata(&home).expect("the folder").uid() == 0;
        fs::write(home.join("users"), format!("{USER}:{}\n", hashed())).expect("users");
        fs::write(home.join("conf"), conf(kind, &home, address, root)).expect("a configuration");
        open_to_all(&home, root);
        let child = command(kind, &home.join("conf")).spawn().unwrap_or_else(|error| {
            panic!("{kind:?} cannot be started ({error}): run tools/setup.sh test, which installs it")
        });
        let mut server = Self { address, home, child };
        server.wait(kind);
        server
    }

    /// The folder on the disk of the server.
    pub(crate) fn dav(&self) -> PathBuf {
        self.home.join("root/dav")
    }

    fn wait(&mut self, kind: Kind) {
        for _ in 0..600 {
            if TcpStream::connect(self.address).is_ok() {
                return;
            }
            if let Ok(Some(status)) = self.child.try_wait() {
                let log = fs::read_to_string(self.home.join("errors")).unwrap_or_default();
                panic!(
                    "{kind:?} ended at once ({status}); are its modules there (tools/setup.sh test)? {log}"
                );
            }
            thread::sleep(Duration::from_millis(50));
        }
        panic!("{kind:?} does not answer");
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // A server that has ended already needs no ending.
        drop(self.child.kill());
        drop(self.child.wait());
        drop(fs::remove_dir_all(&self.home));
    }
}

fn free() -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a free port");
    listener.local_addr().expect("its address")
}

/// The password as both servers read it.
fn hashed() -> String {
    let output = Command::new("openssl").args(["passwd", "-apr1", PASSWORD]).output();
    let output = output.expect("openssl is there: tools/setup.sh test installs it");
    String::from_utf8(output.stdout).expect("text").trim().to_owned()
}

/// A server that was started by root gives its rights up: the folder must be its new user's.
fn open_to_all(home: &Path, root: bool) {
    for path in [home.to_path_buf(), home.join("root"), home.join("root/dav")] {
        fs::set_permissions(&path, fs::Permissions::from_mode(0o755)).expect("rights");
        if root {
            chown(&path, Some(NOBODY), Some(NOBODY)).expect("owner");
        }
    }
}

fn command(kind: Kind, conf: &Path) -> Command {
    let mut command = match kind {
        // One process that stays in the foreground.
        Kind::Apache => Command::new("/usr/sbin/apache2"),
        Kind::Lighttpd => Command::new("/usr/sbin/lighttpd"),
    };
    let before: &[&str] = match kind {
        Kind::Apache => &["-X", "-f"],
        Kind::Lighttpd => &["-D", "-f"],
    };
    command.args(before).arg(conf).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    command
}

fn conf(kind: Kind, home: &Path, address: SocketAddr, root: bool) -> String {
    let (form, user) = match kind {
        Kind::Apache => (include_str!("apache.conf"), "User #65534\nGroup #65534"),
        Kind::Lighttpd => {
            (include_str!("lighttpd.conf"), "server.username = \"nobody\"\nserver.groupname = \"nogroup\"")
        }
    };
    form.replace("{home}", &home.display().to_string())
        .replace("{port}", &address.port().to_string())
        .replace("{user}", if root { user } else { "" })
        .replace("{body}", &BODY_MOST.to_string())
        .replace("{kib}", &(BODY_MOST / 1024).to_string())
}
