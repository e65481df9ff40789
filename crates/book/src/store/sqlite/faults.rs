//! What SQLite says, as what a person can do.

use std::path::Path;

use rusqlite::ffi::{self, ErrorCode};

use crate::store::{NotSaved, StoreError};

/// A fault met while reading or opening.
pub(super) fn reading(path: &Path, source: rusqlite::Error) -> StoreError {
    let path = path.to_owned();
    match source.sqlite_error_code() {
        Some(ErrorCode::NotADatabase) => StoreError::NotABook { path },
        Some(ErrorCode::DatabaseCorrupt) => StoreError::Broken { path, what: source.to_string() },
        // A column of another type than the table has: only a damaged page holds one.
        None if matches!(
            source,
            rusqlite::Error::InvalidColumnType(..) | rusqlite::Error::FromSqlConversionFailure(..)
        ) =>
        {
            StoreError::Broken { path, what: source.to_string() }
        }
        _ => StoreError::Unreadable { path, source },
    }
}

/// A fault met while writing: whatever it was, the group is not saved.
pub(super) fn writing(path: &Path, source: rusqlite::Error) -> StoreError {
    let extended = source.sqlite_error().map(|error| error.extended_code);
    let why = match (source.sqlite_error_code(), extended) {
        (Some(ErrorCode::NotADatabase | ErrorCode::DatabaseCorrupt), _) => return reading(path, source),
        (Some(ErrorCode::DiskFull), _) => NotSaved::DiskFull,
        (Some(ErrorCode::ReadOnly), Some(ffi::SQLITE_READONLY_DBMOVED)) => NotSaved::TakenAway,
        (Some(ErrorCode::ReadOnly | ErrorCode::CannotOpen | ErrorCode::PermissionDenied), _) => {
            NotSaved::ReadOnly
        }
        (Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked), _) => NotSaved::Busy,
        (_, Some(ffi::SQLITE_IOERR_FSYNC | ffi::SQLITE_IOERR_DIR_FSYNC)) => NotSaved::NotConfirmed,
        _ => NotSaved::DiskFailed,
    };
    StoreError::NotSaved { path: path.to_owned(), why, source: Some(source) }
}
