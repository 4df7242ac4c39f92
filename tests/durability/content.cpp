#include "tests/durability/content.h"

#include "core/exchange/logbook_json.h"

#include <QHash>
#include <QRegularExpression>

namespace coilbook::testing {

namespace {

Result<QByteArray> jsonOf(const LogbookStore& store) {
    const Result<std::vector<EngineSummary>> engines = store.engines();
    if (!engines) {
        return tl::unexpected(engines.error());
    }
    const Result<std::vector<Tester>> testers = store.testers();
    if (!testers) {
        return tl::unexpected(testers.error());
    }
    QByteArray text;
    LogbookJson json([&](const QByteArray& piece) { text += piece; }, *testers, {}, {});
    for (const EngineSummary& engine : *engines) {
        const Result<EngineLog> log = store.engineLog(engine.id);
        if (!log) {
            return tl::unexpected(log.error());
        }
        const Result<std::optional<Draft>> draft = store.draft(engine.id);
        if (!draft) {
            return tl::unexpected(draft.error());
        }
        json.add(*log, *draft);
    }
    json.finish();
    return text;
}

QByteArray withoutIds(const QByteArray& json) {
    static const QRegularExpression id(
        QStringLiteral("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}"));
    const QString text = QString::fromUtf8(json);
    QHash<QString, qsizetype> numbers;
    QString result;
    qsizetype copied = 0;
    for (auto matches = id.globalMatch(text); matches.hasNext();) {
        const QRegularExpressionMatch match = matches.next();
        const qsizetype next = numbers.size() + 1;
        const auto number = numbers.constFind(match.captured());
        const qsizetype shown = number == numbers.constEnd() ? next : *number;
        numbers.insert(match.captured(), shown);
        result += text.mid(copied, match.capturedStart() - copied) + QString::number(shown);
        copied = match.capturedEnd();
    }
    return (result + text.mid(copied)).toUtf8();
}

} // namespace

Result<QByteArray> contentOf(const LogbookStore& store) {
    return jsonOf(store).map(withoutIds);
}

} // namespace coilbook::testing
