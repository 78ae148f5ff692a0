//! Closed lists whose members have a name: the word that content and commands write.

/// Declares a closed list of named members: `named! { /// doc  Name { /// doc  Variant = "slug", } }`.
macro_rules! named {
    ($(#[$meta:meta])* $name:ident { $($(#[$each:meta])* $variant:ident = $slug:literal,)+ }) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name {
            $($(#[$each])* $variant,)+
        }

        impl $name {
            /// All of the list, in its order.
            pub const ALL: [Self; [$($slug),+].len()] = [$(Self::$variant),+];

            /// Its name, as content and commands write it.
            #[must_use]
            pub const fn slug(self) -> &'static str {
                match self { $(Self::$variant => $slug,)+ }
            }
        }
    };
}

pub(crate) use named;
