//! The verbs of work: every word once, with what the language itself must know of it.

/// Whether a verb lays thread, and where.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thread {
    /// It lays none.
    Bare,
    /// A seam, which joins layers at the allowance of their edges.
    Seam,
    /// A row of stitches that keeps a distance of its own from an edge.
    Row,
    /// Stitches whose place follows from the work.
    Stitched,
    /// Stitches over a raw edge, whose length the machine sets.
    Over,
}

/// Hands the table of verbs to a macro: the name in code, the file in `construct/verbs`, the word, the thread.
macro_rules! each_verb {
    ($then:ident) => {
        $then! {
            Cut, cut, "cut", Bare;
            Fuse, fuse, "fuse", Bare;
            Quilt, quilt, "quilt", Stitched;
            Mark, mark, "mark", Bare;
            Pin, pin, "pin", Bare;
            Sew, sew, "sew", Seam;
            Topstitch, topstitch, "topstitch", Row;
            Edgestitch, edgestitch, "edgestitch", Row;
            Staystitch, staystitch, "staystitch", Row;
            Understitch, understitch, "understitch", Row;
            Easestitch, easestitch, "easestitch", Row;
            Boxstitch, boxstitch, "boxstitch", Stitched;
            Applique, applique, "applique", Stitched;
            Baste, baste, "baste", Row;
            Lap, lap, "lap", Bare;
            Press, press, "press", Bare;
            Turn, turn, "turn", Bare;
            Put, put, "put", Bare;
            Trim, trim, "trim", Bare;
            Clip, clip, "clip", Bare;
            Slash, slash, "slash", Bare;
            Grade, grade, "grade", Bare;
            Finish, finish, "finish", Over;
            Fold, fold, "fold", Bare;
            Hem, hem, "hem", Stitched;
            Bind, bind, "bind", Stitched;
            Gather, gather, "gather", Stitched;
            Dart, dart, "dart", Stitched;
            Pleat, pleat, "pleat", Bare;
            Tuck, tuck, "tuck", Stitched;
            Box, r#box, "box", Seam;
            Open, open, "open", Bare;
            Close, close, "close", Stitched;
            Attach, attach, "attach", Bare;
            Buttonhole, buttonhole, "buttonhole", Bare;
            Button, button, "button", Bare;
            Fasten, fasten, "fasten", Bare;
            Insert, insert, "insert", Bare;
            Stuff, stuff, "stuff", Bare;
        }
    };
}
pub(crate) use each_verb;

macro_rules! verbs {
    ($($name:ident, $file:ident, $word:literal, $thread:ident;)*) => {
        /// What a work fact does.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        #[allow(missing_docs, reason = "each is the word of the trade")]
        pub enum Verb {
            $($name,)*
        }

        impl Verb {
            /// All verbs, as they are written.
            pub const ALL: &'static [(&'static str, Verb)] = &[$(($word, Verb::$name),)*];

            /// Whether it lays thread.
            pub fn thread(self) -> Thread {
                match self {
                    $(Verb::$name => Thread::$thread,)*
                }
            }

            /// How it is written.
            pub fn word(self) -> &'static str {
                match self {
                    $(Verb::$name => $word,)*
                }
            }
        }
    };
}
each_verb!(verbs);

impl Verb {
    /// The verb that is written so.
    pub fn parse(word: &str) -> Option<Verb> {
        let word = if word == "appliqué" { "applique" } else { word };
        Verb::ALL.iter().find(|(written, _)| *written == word).map(|(_, verb)| *verb)
    }

    /// Whether thread holds layers together at a distance from an edge.
    pub fn joins_at_allowance(self) -> bool {
        self.thread() == Thread::Seam
    }

    /// Whether its stitches may hold more than the layers that they join.
    pub fn catches(self) -> bool {
        self.stitches() && self.lasts()
    }

    /// Whether its stitches are there to stay.
    pub fn lasts(self) -> bool {
        let passing = matches!(self, Verb::Baste | Verb::Staystitch | Verb::Easestitch | Verb::Gather | Verb::Finish);
        self.stitches() && !passing || matches!(self, Verb::Attach | Verb::Fasten | Verb::Button)
    }

    /// Whether it is done with a notion: what is sewn on, set or passed in.
    pub fn takes_notion(self) -> bool {
        matches!(self, Verb::Button | Verb::Fasten | Verb::Insert | Verb::Stuff)
    }

    /// Whether it says how many: buttons, buttonholes, fasteners.
    pub fn counts(self) -> bool {
        matches!(self, Verb::Buttonhole | Verb::Button | Verb::Fasten)
    }

    /// Whether the machine makes stitches.
    pub fn stitches(self) -> bool {
        self.thread() != Thread::Bare
    }

    /// Whether the maker has to know how long a stitch is.
    pub fn measures_stitches(self) -> bool {
        !matches!(self.thread(), Thread::Bare | Thread::Over)
    }
}
