#include "core/storage/change_text.h"

#include "core/storage/row_values.h"
#include "core/storage/rows.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <array>
#include <utility>

namespace coilbook::storage {

namespace {

/// The name of each kind of change, in the order of the alternatives of Change.
constexpr std::array<const char*, 28> kKinds{
    "add-engine",       "amend-engine",       "add-race",         "amend-race",
    "start-inspection", "start-sitting",      "amend-inspection", "amend-sitting",
    "record-readings",  "amend-reading",      "fit-spring",       "withdraw-fitting",
    "amend-spring",     "decide-reading",     "add-running",      "amend-running",
    "add-level-change", "amend-level-change", "add-planned-race", "amend-planned-race",
    "shelve-spring",    "amend-shelving",     "add-tester",       "amend-tester",
    "add-calibration",  "amend-calibration",  "add-study",        "amend-study"};
static_assert(std::variant_size_v<Change> == kKinds.size(), "name the new kind of change");

QJsonArray jsonOf(const QVariantList& values) {
    QJsonArray array;
    for (const QVariant& value : values) {
        if (value.isNull()) {
            array.append(QJsonValue());
        } else if (value.typeId() == QMetaType::QString) {
            array.append(value.toString());
        } else {
            array.append(QJsonValue(value.toLongLong()));
        }
    }
    return array;
}

QVariantList valuesOf(const QJsonArray& array) {
    QVariantList values;
    for (const QJsonValue& value : array) {
        if (value.isString()) {
            values.append(value.toString());
        } else {
            values.append(value.isDouble() ? QVariant::fromValue<qlonglong>(value.toInteger())
                                           : QVariant());
        }
    }
    return values;
}

/// Puts the parts of a change into an object.
class Writer {
public:
    template <class Record>
    void part(const char* name, const Record& record) {
        m_object.insert(QLatin1String(name), jsonOf(Rows<Record>::values(record)));
    }

    template <class Record>
    void part(const char* name, const std::optional<Record>& record) {
        if (record) {
            part(name, *record);
        }
    }

    template <class Record>
    void part(const char* name, const std::vector<Record>& records) {
        QJsonArray array;
        for (const Record& record : records) {
            array.append(jsonOf(Rows<Record>::values(record)));
        }
        m_object.insert(QLatin1String(name), array);
    }

    void part(const char* name, const Authorship& author) {
        m_object.insert(
            QLatin1String(name),
            jsonOf({author.who, author.at.utc, stored(author.at.utcOffsetMinutes), author.why}));
    }

    void part(const char* name, const FittingId& id) {
        m_object.insert(QLatin1String(name), id.text());
    }

    void part(const char* name, bool flag) { m_object.insert(QLatin1String(name), flag); }

    [[nodiscard]] const QJsonObject& object() const { return m_object; }

private:
    QJsonObject m_object;
};

/// Takes the parts of a change out of an object.
class Reader {
public:
    explicit Reader(QJsonObject object)
        : m_object(std::move(object)) {}

    template <class Record>
    void part(const char* name, Record& record) {
        take(m_object.value(QLatin1String(name)), record);
    }

    template <class Record>
    void part(const char* name, std::optional<Record>& record) {
        if (m_object.contains(QLatin1String(name))) {
            take(m_object.value(QLatin1String(name)), record.emplace());
        }
    }

    template <class Record>
    void part(const char* name, std::vector<Record>& records) {
        const QJsonArray array = m_object.value(QLatin1String(name)).toArray();
        for (const QJsonValue& value : array) {
            take(value, records.emplace_back());
        }
    }

    void part(const char* name, Authorship& author) {
        const QVariantList values = valuesOf(m_object.value(QLatin1String(name)).toArray());
        m_whole = m_whole && values.size() == 4;
        if (m_whole) {
            author = RowReader(values).authorship();
        }
    }

    void part(const char* name, FittingId& id) {
        id = FittingId::fromText(m_object.value(QLatin1String(name)).toString());
    }

    void part(const char* name, bool& flag) { flag = m_object.value(QLatin1String(name)).toBool(); }

    [[nodiscard]] bool isWhole() const { return m_whole; }

private:
    template <class Record>
    void take(const QJsonValue& value, Record& record) {
        const QVariantList values = valuesOf(value.toArray());
        m_whole = m_whole && values.size() == Rows<Record>::shape().columns.size();
        if (!m_whole) {
            return;
        }
        if (Result<Record> read = Rows<Record>::record(values)) {
            record = std::move(*read);
        } else {
            m_whole = false;
        }
    }

    QJsonObject m_object;
    bool m_whole = true;
};

/// Names the parts of each kind of change, once for both ways.
template <class Archive>
class Parts {
public:
    explicit Parts(Archive& archive)
        : a(archive) {}

    template <class Some>
    void operator()(Some& c) const {
        using Kind = std::remove_const_t<Some>;
        if constexpr (std::is_same_v<Kind, AddEngine>) {
            a.part("engine", c.engine);
            a.part("springs", c.springs);
            a.part("fittings", c.fittings);
        } else if constexpr (std::is_same_v<Kind, StartInspection>) {
            a.part("inspection", c.inspection);
            a.part("sitting", c.sitting);
        } else if constexpr (std::is_same_v<Kind, RecordReadings>) {
            a.part("readings", c.readings);
            a.part("springs", c.newSprings);
        } else if constexpr (std::is_same_v<Kind, FitSpring>) {
            a.part("fitting", c.fitting);
            a.part("spring", c.newSpring);
            a.part("inspection", c.newInspection);
            a.part("sitting", c.newSitting);
            a.part("baseline", c.baseline);
            a.part("outgoing", c.outgoing);
        } else if constexpr (std::is_same_v<Kind, ShelveSpring>) {
            a.part("shelving", c.shelving);
            a.part("spring", c.newSpring);
        } else if constexpr (std::is_same_v<Kind, WithdrawFitting>) {
            a.part("fitting", c.fitting);
            a.part("withdrawn", c.withdrawn);
            a.part("author", c.author);
        } else {
            single(c);
        }
    }

private:
    /// The kinds of one record, with its author where facts are amended.
    template <class Some>
    void single(Some& c) const {
        if constexpr (requires { c.author; }) {
            a.part("author", c.author);
        }
        if constexpr (requires { c.engine; }) {
            a.part("record", c.engine);
        } else if constexpr (requires { c.race; }) {
            a.part("record", c.race);
        } else if constexpr (requires { c.inspection; }) {
            a.part("record", c.inspection);
        } else if constexpr (requires { c.sitting; }) {
            a.part("record", c.sitting);
        } else if constexpr (requires { c.reading; }) {
            a.part("record", c.reading);
        } else if constexpr (requires { c.spring; }) {
            a.part("record", c.spring);
        } else if constexpr (requires { c.decision; }) {
            a.part("record", c.decision);
        } else if constexpr (requires { c.running; }) {
            a.part("record", c.running);
        } else if constexpr (requires { c.change; }) {
            a.part("record", c.change);
        } else if constexpr (requires { c.shelving; }) {
            a.part("record", c.shelving);
        } else if constexpr (requires { c.calibration; }) {
            a.part("record", c.calibration);
        } else if constexpr (requires { c.study; }) {
            a.part("record", c.study);
        } else {
            a.part("record", c.tester);
        }
    }

    Archive& a;
};

/// A change of alternative number `index`, without its facts.
template <std::size_t... All>
Change emptyChange(std::size_t index, std::index_sequence<All...> /*all*/) {
    Change change;
    (void)((index == All ? (change.emplace<All>(), true) : false) || ...);
    return change;
}

} // namespace

QString textOf(const std::vector<Change>& changes) {
    QJsonArray array;
    for (const Change& change : changes) {
        Writer writer;
        std::visit(Parts<Writer>(writer), change);
        QJsonObject object = writer.object();
        object.insert(QStringLiteral("kind"), QLatin1String(kKinds.at(change.index())));
        array.append(object);
    }
    return QString::fromUtf8(QJsonDocument(array).toJson(QJsonDocument::Compact));
}

Result<std::vector<Change>> changesFrom(const QString& text) {
    std::vector<Change> changes;
    const QJsonArray array = QJsonDocument::fromJson(text.toUtf8()).array();
    for (const QJsonValue& value : array) {
        const QJsonObject object = value.toObject();
        const QByteArray kind = object.value(QStringLiteral("kind")).toString().toUtf8();
        const auto* const found = std::find(kKinds.begin(), kKinds.end(), kind);
        Reader reader(object);
        if (found == kKinds.end()) {
            return fail(StorageFault::Damaged, {QString::fromUtf8(kind)});
        }
        changes.push_back(emptyChange(static_cast<std::size_t>(found - kKinds.begin()),
                                      std::make_index_sequence<std::variant_size_v<Change>>()));
        std::visit(Parts<Reader>(reader), changes.back());
        if (!reader.isWhole()) {
            return fail(StorageFault::Damaged, {QString::fromUtf8(kind)});
        }
    }
    if (changes.empty()) {
        return fail(StorageFault::Damaged, {text});
    }
    return changes;
}

} // namespace coilbook::storage
