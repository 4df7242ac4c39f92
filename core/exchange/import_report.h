#pragma once

#include <QDate>
#include <QString>
#include <QStringList>

#include <vector>

namespace coilbook {

/// What an import did, as data; wording::importReport() puts it into words.
struct ImportReport {
    /// A spring of which an earlier inspection than its first one became known.
    struct MovedBaseline {
        QString engine;
        QString spring;
        QDate from;
        QDate to;

        bool operator==(const MovedBaseline&) const = default;
    };

    qint64 readingsRead = 0; ///< rows of the files
    qint64 readingsAdded = 0;
    qint64 readingsKnown = 0;    ///< stored already, those below included
    qint64 amendedOriginals = 0; ///< known in the form they had before an amendment, which stays
    qint64 racesRead = 0;
    qint64 racesAdded = 0;
    qint64 racesKnown = 0;
    QStringList enginesMade; ///< by name
    std::vector<MovedBaseline> movedBaselines;

    [[nodiscard]] bool changedNothing() const { return readingsAdded == 0 && racesAdded == 0; }

    /// Adds what the import did to a further engine.
    ImportReport& operator+=(const ImportReport& other);

    bool operator==(const ImportReport&) const = default;
};

} // namespace coilbook
