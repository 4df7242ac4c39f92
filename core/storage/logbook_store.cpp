#include "core/storage/logbook_store.h"

#include "core/storage/backup.h"
#include "core/storage/change_applier.h"
#include "core/storage/drafts.h"
#include "core/storage/durable_files.h"
#include "core/storage/engine_log_reader.h"
#include "core/storage/import_batch.h"
#include "core/storage/schema.h"
#include "core/storage/seals.h"
#include "core/storage/transaction.h"
#include "core/storage/verification.h"

#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>

namespace coilbook {

using storage::Connection;
using storage::Transaction;

class LogbookStore::Private {
public:
    QString path;
    OpenMode mode = OpenMode::ReadOnly;
    std::unique_ptr<QTemporaryDir> copyFolder; ///< holds the migrated copy of an older logbook
    std::unique_ptr<Connection> connection;

    Private(QString shownPath, OpenMode openMode, std::unique_ptr<Connection> open)
        : path(std::move(shownPath))
        , mode(openMode)
        , connection(std::move(open)) {}

    Private(const Private&) = delete;
    Private& operator=(const Private&) = delete;
    Private(Private&&) = delete;
    Private& operator=(Private&&) = delete;

    ~Private() {
        if (mode == OpenMode::ReadWrite) {
            // Removes the empty journal that TRUNCATE leaves beside the file. Where that fails,
            // the journal says nothing and harms nothing.
            [[maybe_unused]] const Result<void> removed =
                connection->run(QStringLiteral("PRAGMA journal_mode=DELETE"));
        }
    }

    /// Reads inside one consistent view.
    template <class Value, class Read>
    [[nodiscard]] Result<Value> inOneView(Read read) const {
        const Result<Transaction> view = Transaction::read(*connection);
        if (!view) {
            return tl::unexpected(view.error());
        }
        return read();
    }
};

namespace {

Result<void> makeLogbook(const Connection& connection) {
    const Result<void> made = storage::prepareForWriting(connection).and_then([&] {
        return storage::migrate(connection, 0, storage::sqliteMigrations());
    });
    // The journal is no part of what gets a name.
    return made.and_then([&] {
        return connection.scalar(QStringLiteral("PRAGMA journal_mode=DELETE"))
            .map([](const QVariant&) {});
    });
}

/// An older logbook that must not be changed is brought up to date as a copy.
Result<std::unique_ptr<Connection>> migratedCopy(const Connection& older, int version,
                                                 const QTemporaryDir& folder) {
    const QString path = folder.filePath(QStringLiteral("copy.coilbook"));
    if (Result<void> copied = storage::copyInto(older, path); !copied) {
        return tl::unexpected(copied.error());
    }
    Result<std::unique_ptr<Connection>> copy =
        Connection::open(path, Connection::Access::ReadWrite);
    if (!copy) {
        return copy;
    }
    Result<void> migrated = storage::prepareForWriting(**copy).and_then(
        [&] { return storage::migrate(**copy, version, storage::sqliteMigrations()); });
    if (!migrated) {
        return tl::unexpected(migrated.error());
    }
    return copy;
}

} // namespace

LogbookStore::LogbookStore(std::unique_ptr<Private> priv)
    : d(std::move(priv)) {}

LogbookStore::LogbookStore(LogbookStore&&) noexcept = default;
LogbookStore& LogbookStore::operator=(LogbookStore&&) noexcept = default;
LogbookStore::~LogbookStore() = default;

Result<LogbookStore> LogbookStore::create(const QString& path) {
    if (QFileInfo::exists(path)) {
        return fail(StorageFault::AlreadyExists, {}, path);
    }
    // Made under another name: a power cut leaves a whole logbook or none at all.
    const QString unfinished = storage::unfinishedName(path);
    const auto make = [&]() -> Result<void> {
        const Result<std::unique_ptr<Connection>> connection =
            Connection::open(unfinished, Connection::Access::Create);
        return connection ? makeLogbook(**connection) : tl::unexpected(connection.error());
    };
    Result<void> made = make().and_then([&] { return storage::moveDurably(unfinished, path); });
    if (!made) {
        QFile::remove(unfinished);
        QFile::remove(unfinished + QStringLiteral("-journal"));
        if (made.error().file == unfinished) {
            made.error().file = path;
        }
        return tl::unexpected(made.error());
    }
    return open(path, OpenMode::ReadWrite);
}

Result<LogbookStore> LogbookStore::open(const QString& path, OpenMode mode) {
    const bool writing = mode == OpenMode::ReadWrite;
    Result<std::unique_ptr<Connection>> connection = Connection::open(
        path, writing ? Connection::Access::ReadWrite : Connection::Access::ReadOnly);
    if (!connection) {
        return tl::unexpected(connection.error());
    }
    const Result<storage::FileIdentity> identity = storage::readIdentity(**connection);
    if (!identity) {
        return tl::unexpected(identity.error());
    }
    Result<void> ready = storage::checkIdentity(*identity, path, storage::sqliteMigrations());
    const int version = identity->schemaVersion;
    const bool older = version < storage::newestVersion(storage::sqliteMigrations());
    if (writing) {
        ready = ready.and_then([&] { return storage::prepareForWriting(**connection); });
        if (older) {
            ready =
                ready.and_then([&] { return storage::keepOlderVersion(**connection, version); })
                    .and_then([&] {
                        return storage::migrate(**connection, version, storage::sqliteMigrations());
                    });
        }
    } else {
        ready = ready.and_then([&] { return storage::prepareForReading(**connection); });
    }
    if (!ready) {
        return tl::unexpected(ready.error());
    }
    auto priv = std::make_unique<Private>(path, mode, std::move(*connection));
    if (older && !writing) {
        priv->copyFolder = std::make_unique<QTemporaryDir>();
        Result<std::unique_ptr<Connection>> copy =
            migratedCopy(*priv->connection, version, *priv->copyFolder);
        if (!copy) {
            return tl::unexpected(copy.error());
        }
        priv->connection = std::move(*copy);
    }
    return LogbookStore(std::move(priv));
}

QString LogbookStore::path() const {
    return d->path;
}

OpenMode LogbookStore::mode() const {
    return d->mode;
}

Result<std::vector<EngineSummary>> LogbookStore::engines() const {
    return storage::readEngines(*d->connection);
}

Result<EngineLog> LogbookStore::engineLog(const EngineId& engine) const {
    return d->inOneView<EngineLog>([&] { return storage::readEngineLog(*d->connection, engine); });
}

Result<std::vector<Tester>> LogbookStore::testers() const {
    return storage::readTesters(*d->connection);
}

Result<std::vector<Calibration>> LogbookStore::calibrations() const {
    return storage::readCalibrations(*d->connection);
}

Result<std::vector<RepeatabilityStudy>> LogbookStore::studies() const {
    return storage::readStudies(*d->connection);
}

Result<std::optional<Draft>> LogbookStore::draft(const EngineId& engine) const {
    return storage::readDraft(*d->connection, engine);
}

Result<void> LogbookStore::apply(const Change& change, const Clock& clock) {
    return applyAll({change}, clock);
}

Result<void> LogbookStore::applyAll(const std::vector<Change>& changes, const Clock& clock) {
    Result<Transaction> transaction = Transaction::write(*d->connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    const storage::ChangeApplier applier(*d->connection, clock);
    for (const Change& change : changes) {
        if (Result<void> done = std::visit(applier, change); !done) {
            return done;
        }
    }
    return transaction->commit();
}

Result<void> LogbookStore::saveDraft(const Draft& draft) {
    return storage::writeDraft(*d->connection, draft);
}

Result<void> LogbookStore::clearDraft(const EngineId& engine) {
    return storage::removeDraft(*d->connection, engine);
}

Result<std::unique_ptr<LogbookStore::Batch>> LogbookStore::beginBatch() {
    return storage::ImportBatch::begin(*d->connection);
}

Result<std::optional<NotedSeal>> LogbookStore::newestSeal(const EngineId& engine) const {
    return d->inOneView<std::optional<NotedSeal>>(
        [&] { return storage::newestSealOf(*d->connection, engine); });
}

Result<SealAnswer> LogbookStore::askSeal(const NotedSeal& noted) const {
    return storage::askSeal(*d->connection, noted);
}

Result<void> LogbookStore::sealAnew(SealBeginning beginning) {
    Result<Transaction> transaction = Transaction::write(*d->connection);
    if (!transaction) {
        return tl::unexpected(transaction.error());
    }
    return storage::sealAnew(*d->connection, beginning).and_then([&] {
        return transaction->commit();
    });
}

Result<qint64> LogbookStore::dataVersion() const {
    return d->connection->scalar(QStringLiteral("PRAGMA data_version"))
        .map([](const QVariant& version) { return version.toLongLong(); });
}

Result<VerifyReport> LogbookStore::verify() const {
    return storage::verifyFile(*d->connection);
}

Result<void> LogbookStore::backup(const QString& destination) const {
    return storage::backUp(*d->connection, destination);
}

} // namespace coilbook
