#pragma once

#include "core/domain/seal.h"
#include "core/support/logbook_fault.h"

#include <QString>
#include <QStringList>

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace coilbook {

/// What a check of a logbook can find wrong. `Finding::arguments` are listed at the enumerator.
enum class FindingKind {
    Page,             ///< the file's own structure; 1: what SQLite says
    NoSuchRow,        ///< refers to a row that is not there; 1: table of that row
    Checksum,         ///< the row does not match its checksum
    NotSealed,        ///< the row names no seal, or one that is not there
    NotAsSealed,      ///< the row is not what its seal is over; 1: number of the seal
    SealedRowGone,    ///< a row that was sealed is not there; 1: number of the seal
    BlockNotAsSealed, ///< rows sealed together were changed, added or removed; 1: number, 2: rows
                      ///< sealed, 3: rows there
    AllNotAsSealed,   ///< the same of all rows at a beginning; arguments likewise
    BrokenChain,      ///< the seal does not follow from the seal before; 1: number
    NoOriginal,       ///< amends readings that lead to no original
    AmendmentGap,     ///< an amendment does not begin where the one before it ended
    UnknownFact,      ///< an amendment names a fact that records of its kind do not have
    NotLeadingToNow,  ///< the newest amendment of a fact is not what the record says
    NothingAmended,   ///< an amendment of a record that is not there
    BreaksRule,       ///< of the logbook: `Finding::rule` with its arguments
    LivesOverlap,     ///< a spring's time at a place ends before it began; 1: spring, 2: place,
                  ///< 3: day and 4: races that it began at, 5: day and 6: races that it ended at
};

struct Finding {
    FindingKind kind = FindingKind::Page;
    QString where; ///< table and id, or what the logbook calls it: `engine Blue`
    QStringList arguments;
    std::optional<LogbookFault> rule;

    bool operator==(const Finding&) const = default;
};

/// What `verify` found wrong; nothing: no finding at all.
struct VerifyReport {
    /// A file that was tampered with as a whole has a finding for each row.
    static constexpr std::size_t kMostListed = 1000;

    struct Beginning {
        qint64 seal = 0;
        SealBeginning kind = SealBeginning::Created;

        bool operator==(const Beginning&) const = default;
    };

    std::vector<Finding> findings; ///< the first ones
    qint64 more = 0;               ///< found beside those
    qint64 rowsChecked = 0;
    NotedSeal newestSeal; ///< number 0: there is none
    std::vector<Beginning> beginnings;

    [[nodiscard]] bool isSound() const { return findings.empty(); }

    /// Nothing is damaged, lost or changed by others, whatever else may be wrong with the data.
    [[nodiscard]] bool isIntact() const {
        return std::all_of(findings.begin(), findings.end(), [](const Finding& finding) {
            return finding.kind == FindingKind::BreaksRule ||
                   finding.kind == FindingKind::LivesOverlap;
        });
    }

    void add(Finding finding) {
        if (findings.size() < kMostListed) {
            findings.push_back(std::move(finding));
        } else {
            ++more;
        }
    }
};

/// Whether a logbook went through the state that a noted seal was over.
enum class SealAnswer {
    PassedThrough,
    Differs,  ///< it has a seal of that number, over something else
    NotThere, ///< it has no seal of that number
};

} // namespace coilbook
