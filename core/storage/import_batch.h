#pragma once

#include "core/storage/logbook_store.h"
#include "core/storage/seal_blocks.h"
#include "core/storage/table.h"
#include "core/storage/transaction.h"

#include <QSet>
#include <QUuid>

#include <future>
#include <map>
#include <optional>
#include <thread>
#include <tuple>

namespace coilbook::storage {

/// The rows of an import in one transaction. Readings are gathered into blocks; while this thread
/// writes one block, another makes the values and checksums of the next.
class ImportBatch final : public LogbookStore::Batch {
public:
    /// Begins the transaction on a connection that outlives the batch.
    [[nodiscard]] static Result<std::unique_ptr<LogbookStore::Batch>>
    begin(const Connection& connection);

    ~ImportBatch() override;
    ImportBatch(const ImportBatch&) = delete;
    ImportBatch& operator=(const ImportBatch&) = delete;
    ImportBatch(ImportBatch&&) = delete;
    ImportBatch& operator=(ImportBatch&&) = delete;

    [[nodiscard]] Result<void> add(const Engine& engine) override { return addRow(engine); }

    [[nodiscard]] Result<void> add(const Tester& tester) override { return addRow(tester); }

    [[nodiscard]] Result<void> add(const Calibration& calibration) override {
        return addRow(calibration);
    }

    [[nodiscard]] Result<void> add(const RepeatabilityStudy& study) override {
        return addRow(study);
    }

    [[nodiscard]] Result<void> add(const Spring& spring) override {
        m_there.insert(spring.id.uuid());
        return addRow(spring);
    }

    [[nodiscard]] Result<void> add(const Fitting& fitting) override { return addRow(fitting); }

    [[nodiscard]] Result<void> add(const Race& race) override { return addRow(race); }

    [[nodiscard]] Result<void> add(const Inspection& inspection) override {
        return addRow(inspection);
    }

    [[nodiscard]] Result<void> add(const Sitting& sitting) override {
        m_there.insert(sitting.id.uuid());
        return addRow(sitting);
    }

    [[nodiscard]] Result<void> add(const Reading& reading) override;

    [[nodiscard]] Result<void> add(const Running& running) override { return addRow(running); }

    [[nodiscard]] Result<void> add(const LevelChange& change) override { return addRow(change); }

    [[nodiscard]] Result<void> add(const PlannedRace& race) override { return addRow(race); }

    [[nodiscard]] Result<void> add(const Shelving& shelving) override { return addRow(shelving); }

    [[nodiscard]] Result<void> add(const Decision& decision) override { return addRow(decision); }

    [[nodiscard]] Result<void> add(const Amendment& amendment) override {
        return addRow(amendment);
    }

    [[nodiscard]] Result<void> commit() override;

private:
    /// The values of one INSERT of rows, in order.
    struct Portion {
        QVariantList values;
        qsizetype rows = 0;
        bool packed = false; ///< each row is a PackedReading
    };

    /// Readings that are sealed together.
    struct ReadingBlock {
        qint64 seal = 0;
        std::vector<Portion> portions;
        std::vector<SealedRow> rows;
        QByteArray content; ///< of the seal
    };

    explicit ImportBatch(const Connection& connection);

    [[nodiscard]] static ReadingBlock blockOf(const std::vector<Reading>& readings, qint64 seal);
    /// Hands what is gathered to the other thread and writes what it had made before.
    [[nodiscard]] Result<void> passOn();
    [[nodiscard]] Result<void> writeMade();
    /// A reading names a sitting and a spring that are there: Conflict otherwise.
    [[nodiscard]] Result<void> checkReferences(const Reading& reading);
    [[nodiscard]] Result<void> checkForeignKeys();
    /// Returns how many of the rows were not there before.
    [[nodiscard]] Result<qsizetype> write(const TableShape& shape, const Portion& portion);
    [[nodiscard]] Result<void> addRow(const TableShape& shape, const QVariantList& values);
    /// Leaves the rows that the block has put there, for some were there before.
    [[nodiscard]] Result<void> keepNewRows(ReadingBlock& block);

    template <class Record>
    [[nodiscard]] Result<void> addRow(const Record& record) {
        return addRow(Rows<Record>::shape(), Rows<Record>::values(record));
    }

    const Connection& m_connection;
    std::optional<Transaction> m_transaction;
    SealBlocks m_seals{ChainEnd()};
    QSet<QUuid> m_there; ///< sittings and springs known to be in the logbook
    QUuid m_latestSitting;
    QUuid m_latestSpring;
    QSet<QString> m_written; ///< tables whose foreign keys are still to be checked
    /// By table, whether packed, and rows.
    std::map<std::tuple<QString, bool, qsizetype>, InsertStatement> m_prepared;
    std::vector<Reading> m_gathered;
    ReadingBlock m_used; ///< written, for the other thread to clear away
    std::future<ReadingBlock> m_made;
    std::jthread m_maker;
};

} // namespace coilbook::storage
