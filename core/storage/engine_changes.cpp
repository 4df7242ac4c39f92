#include "core/domain/log_rules.h"
#include "core/storage/change_applier.h"
#include "core/storage/engine_log_reader.h"
#include "core/storage/row_values.h"

namespace coilbook::storage {

Result<void> ChangeApplier::checkEngineName(const Engine& engine) const {
    const Result<std::vector<EngineSummary>> engines = readEngines(m_connection);
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    QStringList others;
    for (const EngineSummary& other : *engines) {
        if (other.id != engine.id) {
            others.append(other.name);
        }
    }
    return checkNameIsFree(engine.name, QStringLiteral("engine"), others);
}

Result<void> ChangeApplier::checkTesterName(const Tester& tester) const {
    if (Result<void> named = checkName(tester.name, QStringLiteral("tester")); !named) {
        return named;
    }
    const Result<std::vector<Tester>> testers = readTesters(m_connection);
    if (!testers) {
        return tl::unexpected(testers.error());
    }
    QStringList others;
    for (const Tester& other : *testers) {
        if (other.id != tester.id) {
            others.append(other.name);
        }
    }
    return checkNameIsFree(tester.name, QStringLiteral("tester"), others);
}

Result<void> ChangeApplier::checkPlacesInUse(const Engine& engine) const {
    const QString sql =
        QStringLiteral("SELECT DISTINCT r.cylinder, r.valve FROM inspection i"
                       " JOIN sitting s ON s.inspection_id = i.id"
                       " JOIN reading r ON r.sitting_id = s.id WHERE i.engine_id = ?"
                       " UNION SELECT f.cylinder, f.valve FROM fitting f WHERE f.engine_id = ?");
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const QVariantList values{query.value(0), query.value(1)};
        const Place place = RowReader(values).place();
        if (!engine.layout.has(place)) {
            return fail(LogbookFault::NoSuchPlace, {placeText(place)});
        }
        return {};
    };
    return m_connection.forEachRow(sql, {engine.id.text(), engine.id.text()}, onRow);
}

Result<void> ChangeApplier::operator()(const AddEngine& change) const {
    const Result<bool> there = isStored(change.engine);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    Result<void> done = checkEngine(change.engine)
                            .and_then([&] { return checkEngineName(change.engine); })
                            .and_then([&] { return insert(m_connection, change.engine); });
    for (const Spring& spring : change.springs) {
        done = done.and_then([&] { return checkName(spring.label, QStringLiteral("spring")); })
                   .and_then([&] { return insert(m_connection, spring); });
    }
    for (const Fitting& fitting : change.fittings) {
        done = done.and_then([&] { return checkFitting(fitting, change.engine.layout); })
                   .and_then([&] { return insert(m_connection, fitting); });
    }
    return done.and_then([&] { return checkLabels(change.engine.id); });
}

Result<void> ChangeApplier::operator()(const AmendEngine& change) const {
    const Result<Engine> before = asStored<Engine>(change.engine.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    return checkEngine(change.engine)
        .and_then([&] { return checkEngineName(change.engine); })
        .and_then([&] { return checkPlacesInUse(change.engine); })
        .and_then([&] { return amendTo(*before, change.engine, change.author); });
}

Result<void> ChangeApplier::operator()(const AddTester& change) const {
    const Result<bool> there = isStored(change.tester);
    if (!there) {
        return tl::unexpected(there.error());
    }
    if (*there) {
        return {};
    }
    return checkTesterName(change.tester).and_then([&] {
        return insert(m_connection, change.tester);
    });
}

Result<void> ChangeApplier::operator()(const AmendTester& change) const {
    const Result<Tester> before = asStored<Tester>(change.tester.id);
    if (!before) {
        return tl::unexpected(before.error());
    }
    return checkTesterName(change.tester).and_then([&] {
        return amendTo(*before, change.tester, change.author);
    });
}

} // namespace coilbook::storage
