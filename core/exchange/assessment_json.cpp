#include "core/exchange/assessment_json.h"

#include "core/exchange/json_writer.h"
#include "core/wording/wording.h"

#include <algorithm>

namespace coilbook {

namespace {

constexpr int kForceDecimals = 4;
constexpr int kProbabilityDecimals = 6;

QString nameOf(Standing standing) {
    switch (standing) {
    case Standing::PastLimit:
        return QStringLiteral("past-limit");
    case Standing::Due:
        return QStringLiteral("due");
    case Standing::NoTrend:
        return QStringLiteral("no-trend");
    case Standing::Sound:
        return QStringLiteral("sound");
    }
    Q_UNREACHABLE();
}

QString nameOf(PastBy pastBy) {
    switch (pastBy) {
    case PastBy::Measured:
        return QStringLiteral("measured");
    case PastBy::Estimate:
        return QStringLiteral("estimate");
    case PastBy::Both:
        return QStringLiteral("both");
    }
    Q_UNREACHABLE();
}

/// Writes the parts of an assessment, each in the order of keys that the contract shows.
class AssessmentWriter {
public:
    explicit AssessmentWriter(JsonWriter& json)
        : m_json(json)
        , m_quantities(ForceUnit::PoundForce, QLocale::c()) {}

    void write(const Assessment& assessment) {
        m_json.beginObject();
        text("format", QStringLiteral("coilbook-assessment/1"));
        text("engine", assessment.engine);
        day("as_of", assessment.asOf);
        count("engine_races", assessment.racesNow);
        force("limit_lbf", assessment.rules.limit);
        count("races_ahead", assessment.rules.racesAhead);
        probability("caution", probabilityOf(assessment.rules.caution));
        m_json.key("inspections");
        m_json.beginArray();
        for (const InspectionAssessment& inspection : assessment.inspections) {
            write(inspection);
        }
        m_json.endArray();
        m_json.key("springs");
        m_json.beginArray();
        for (const SpringAssessment& spring : assessment.springs) {
            write(spring, assessment);
        }
        m_json.endArray();
        m_json.endObject();
    }

private:
    void write(const InspectionAssessment& inspection) {
        const std::optional<ForceEstimate>& shift = inspection.shift;
        m_json.beginObject(JsonWriter::Layout::OneLine);
        day("inspected_on", inspection.on);
        count("engine_races", inspection.races);
        force("shift_lbf", shift ? std::optional(shift->mean) : std::nullopt);
        force("shift_low90", shift ? std::optional(shift->low90) : std::nullopt);
        force("shift_high90", shift ? std::optional(shift->high90) : std::nullopt);
        flag("shifted", inspection.shifted);
        m_json.endObject();
    }

    void write(const SpringAssessment& spring, const Assessment& assessment) {
        m_json.beginObject();
        count("cylinder", spring.place.cylinder.number());
        text("valve", valveLetter(spring.place.valve));
        text("spring", spring.label);
        count("inspections", spring.inspections);
        count("races", spring.exposure);
        day("latest_on", spring.latestOn);
        count("races_at_latest", spring.racesAtLatest);
        force("baseline_lbf", spring.baseline);
        force("latest_lbf", spring.latest);
        force("measured_loss_lbf", spring.measuredLoss);
        estimate("loss_lbf", spring.loss);
        estimate("loss_per_race_lbf", spring.lossPerRace);
        probability("p_past_limit", spring.pPastLimit);
        probability("p_due", spring.pDue);
        racesLeft(spring.racesLeft);
        text("status", nameOf(spring.standing));
        m_json.key("past_by");
        if (spring.pastBy) {
            m_json.string(nameOf(*spring.pastBy));
        } else {
            m_json.null();
        }
        flag("off_trend", spring.offTrend);
        m_json.key("reasons");
        m_json.beginArray();
        for (const Reason& reason : spring.reasons) {
            m_json.string(wording::reason(reason, spring, assessment, m_quantities));
        }
        m_json.endArray();
        m_json.endObject();
    }

    void text(const char* key, const QString& value) {
        m_json.key(key);
        m_json.string(value);
    }

    void day(const char* key, const QDate& value) {
        m_json.key(key);
        if (value.isNull()) {
            m_json.null();
        } else {
            m_json.string(value.toString(Qt::ISODate));
        }
    }

    void count(const char* key, const std::optional<int>& value) {
        m_json.key(key);
        if (value) {
            m_json.integer(*value);
        } else {
            m_json.null();
        }
    }

    void flag(const char* key, bool value) {
        m_json.key(key);
        m_json.boolean(value);
    }

    void force(const char* key, const std::optional<Force>& value) {
        m_json.key(key);
        if (value) {
            m_json.decimal(value->inPoundsForce(), kForceDecimals);
        } else {
            m_json.null();
        }
    }

    void probability(const char* key, const std::optional<double>& value) {
        m_json.key(key);
        if (value) {
            m_json.decimal(*value, kProbabilityDecimals);
        } else {
            m_json.null();
        }
    }

    void estimate(const char* key, const std::optional<ForceEstimate>& estimate) {
        m_json.key(key);
        if (!estimate) {
            m_json.null();
            return;
        }
        m_json.beginObject(JsonWriter::Layout::OneLine);
        force("mean", estimate->mean);
        force("low90", estimate->low90);
        force("high90", estimate->high90);
        m_json.endObject();
    }

    void racesLeft(const std::optional<RacesLeft>& left) {
        m_json.key("races_left");
        if (!left) {
            m_json.null();
            return;
        }
        m_json.beginObject(JsonWriter::Layout::OneLine);
        count("p10", left->p10);
        count("median", left->median);
        count("p90", left->p90);
        m_json.endObject();
    }

    JsonWriter& m_json;
    Quantities m_quantities;
};

} // namespace

QByteArray assessmentsToJson(std::span<const Assessment> assessments) {
    std::vector<const Assessment*> byName;
    byName.reserve(assessments.size());
    for (const Assessment& assessment : assessments) {
        byName.push_back(&assessment);
    }
    std::sort(byName.begin(), byName.end(), [](const Assessment* a, const Assessment* b) {
        return a->engine.toUtf8() < b->engine.toUtf8();
    });
    QByteArray result;
    JsonWriter json([&result](const QByteArray& text) { result += text; });
    AssessmentWriter writer(json);
    json.beginArray();
    for (const Assessment* assessment : byName) {
        writer.write(*assessment);
    }
    json.endArray();
    json.finish();
    return result;
}

} // namespace coilbook
