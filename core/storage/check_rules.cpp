#include "core/domain/fitting_spans.h"
#include "core/domain/log_rules.h"
#include "core/storage/checks.h"
#include "core/storage/engine_log_reader.h"
#include "core/storage/table.h"

#include <algorithm>

namespace coilbook::storage {

namespace {

/// A row that cannot be read has been found before; what it belongs to is left out here.
Result<void> leaveOutUnreadable(const Error& error) {
    const auto* fault = std::get_if<StorageFault>(&error.fault);
    const bool isKnown =
        fault == nullptr || *fault == StorageFault::Damaged || *fault == StorageFault::NotALogbook;
    return isKnown ? Result<void>() : tl::unexpected(error);
}

void addBreach(const Result<void>& checked, const QString& where, VerifyReport& report) {
    if (checked) {
        return;
    }
    if (const auto* rule = std::get_if<LogbookFault>(&checked.error().fault)) {
        report.add({FindingKind::BreaksRule, where, checked.error().arguments, *rule});
    }
}

QString isoText(const QDate& day) {
    return day.toString(Qt::ISODate);
}

void checkLives(const EngineLog& log, const QString& where, VerifyReport& report) {
    const QDate always(9999, 12, 31);
    for (const FittingSpan& span : fittingSpans(log, currentHits(log), always)) {
        const bool overlaps = span.endedRaces &&
                              (span.endedOn < span.fittedOn || *span.endedRaces < span.fittedRaces);
        if (!overlaps) {
            continue;
        }
        const auto spring =
            std::find_if(log.springs.begin(), log.springs.end(),
                         [&](const Spring& candidate) { return candidate.id == span.spring; });
        const QString label = spring == log.springs.end() ? span.spring.text() : spring->label;
        report.add({FindingKind::LivesOverlap,
                    where,
                    {label, placeText(span.place), isoText(span.fittedOn),
                     QString::number(span.fittedRaces), isoText(span.endedOn),
                     QString::number(*span.endedRaces)},
                    {}});
    }
}

QString whereOf(const Inspection& inspection, const QString& engine) {
    return QStringLiteral("inspection %1 %2").arg(engine, isoText(inspection.inspectedOn));
}

class RulesCheck {
public:
    RulesCheck(const Connection& connection, const QSet<QString>& suspects, VerifyReport& report)
        : m_connection(connection)
        , m_suspects(suspects)
        , m_report(report) {}

    Result<void> checkEngines() {
        const Result<std::vector<EngineSummary>> engines = readEngines(m_connection);
        if (!engines) {
            return leaveOutUnreadable(engines.error());
        }
        for (const EngineSummary& engine : *engines) {
            const Result<EngineLog> outline = readOutline(m_connection, engine.id);
            Result<void> checked =
                outline ? checkOutline(*outline) : leaveOutUnreadable(outline.error());
            if (!checked) {
                return checked;
            }
        }
        return {};
    }

private:
    Result<void> checkOutline(const EngineLog& outline) {
        const QString where = QStringLiteral("engine ") + outline.engine.name;
        addBreach(checkEngine(outline.engine), where, m_report);
        addBreach(checkTimeline(outline.inspections, outline.races), where, m_report);
        addBreach(checkMoments(outline), where, m_report);
        for (const Inspection& inspection : outline.inspections) {
            if (!m_suspects.contains(inspection.id.text())) {
                continue;
            }
            const Result<EngineLog> log = readInspectionLog(m_connection, inspection);
            if (!log) {
                if (Result<void> known = leaveOutUnreadable(log.error()); !known) {
                    return known;
                }
                continue;
            }
            addBreach(checkHits(*log), whereOf(inspection, outline.engine.name), m_report);
        }
        // Without recorded fittings the lives follow from inspections alone, which are in order.
        if (outline.fittings.empty()) {
            return {};
        }
        const Result<EngineLog> log = readEngineLog(m_connection, outline.engine.id);
        if (!log) {
            return leaveOutUnreadable(log.error());
        }
        checkLives(*log, where, m_report);
        return {};
    }

    const Connection& m_connection;
    const QSet<QString>& m_suspects;
    VerifyReport& m_report;
};

} // namespace

Result<void> checkRules(const Connection& connection, const QSet<QString>& suspects,
                        VerifyReport& report) {
    return RulesCheck(connection, suspects, report).checkEngines();
}

} // namespace coilbook::storage
