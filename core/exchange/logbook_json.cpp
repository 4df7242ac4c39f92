#include "core/exchange/logbook_json.h"

#include "core/domain/force_text.h"
#include "core/exchange/decimal_text.h"

#include <algorithm>
#include <cmath>

namespace coilbook {

namespace {

QString nameOf(Subject subject) {
    switch (subject) {
    case Subject::Engine:
        return QStringLiteral("engine");
    case Subject::Race:
        return QStringLiteral("race");
    case Subject::Inspection:
        return QStringLiteral("inspection");
    case Subject::Sitting:
        return QStringLiteral("sitting");
    case Subject::Spring:
        return QStringLiteral("spring");
    case Subject::Tester:
        return QStringLiteral("tester");
    case Subject::Fitting:
        return QStringLiteral("fitting");
    case Subject::Running:
        return QStringLiteral("running");
    case Subject::LevelChange:
        return QStringLiteral("level_change");
    case Subject::Calibration:
        return QStringLiteral("calibration");
    case Subject::Study:
        return QStringLiteral("study");
    case Subject::PlannedRace:
        return QStringLiteral("planned_race");
    case Subject::Shelving:
        return QStringLiteral("shelving");
    }
    Q_UNREACHABLE();
}

QString nameOf(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::Original:
        return QStringLiteral("original");
    case ReadingKind::Correction:
        return QStringLiteral("correction");
    case ReadingKind::Withdrawal:
        return QStringLiteral("withdrawal");
    }
    Q_UNREACHABLE();
}

QString nameOf(ExposureUnit unit) {
    switch (unit) {
    case ExposureUnit::Races:
        return QStringLiteral("races");
    case ExposureUnit::Laps:
        return QStringLiteral("laps");
    }
    Q_UNREACHABLE();
}

QString nameOf(LevelChangeKind kind) {
    switch (kind) {
    case LevelChangeKind::Shim:
        return QStringLiteral("shim");
    case LevelChangeKind::ValveSeatWork:
        return QStringLiteral("valve_seat_work");
    case LevelChangeKind::Retainer:
        return QStringLiteral("retainer");
    case LevelChangeKind::Move:
        return QStringLiteral("move");
    case LevelChangeKind::Other:
        return QStringLiteral("other");
    }
    Q_UNREACHABLE();
}

QString nameOf(ReadingJudgement judgement) {
    switch (judgement) {
    case ReadingJudgement::LeftToModel:
        return QStringLiteral("left_to_model");
    case ReadingJudgement::Kept:
        return QStringLiteral("kept");
    case ReadingJudgement::SetAside:
        return QStringLiteral("set_aside");
    case ReadingJudgement::DropConfirmed:
        return QStringLiteral("drop_confirmed");
    case ReadingJudgement::DropDenied:
        return QStringLiteral("drop_denied");
    }
    Q_UNREACHABLE();
}

template <class Record, class Key>
std::vector<Record> sortedBy(std::vector<Record> records, const Key& key) {
    std::sort(records.begin(), records.end(),
              [&](const Record& a, const Record& b) { return key(a) < key(b); });
    return records;
}

template <class Record>
std::vector<Record> byArrival(const std::vector<Record>& records) {
    return sortedBy(records, [](const Record& record) { return record.id; });
}

} // namespace

LogbookJson::LogbookJson(JsonWriter::Sink sink, const std::vector<Tester>& testers,
                         const std::vector<Calibration>& calibrations,
                         const std::vector<RepeatabilityStudy>& studies)
    : m_json(std::move(sink)) {
    m_json.beginObject();
    field("format", QStringLiteral("coilbook-logbook/1"));
    writeAll("testers", sortedBy(testers, [](const Tester& tester) {
                 return std::pair(tester.name.toUtf8(), tester.id);
             }));
    writeAll("calibrations", calibrations);
    writeAll("studies", studies);
    m_json.key("engines");
    m_json.beginArray();
}

void LogbookJson::add(const EngineLog& log, const std::optional<Draft>& draft) {
    std::vector<Amendment> amendments;
    for (const Amendment& amendment : byArrival(log.amendments)) {
        if (amendment.subject == Subject::Tester || amendment.subject == Subject::Calibration ||
            amendment.subject == Subject::Study) {
            m_testerAmendments.emplace(amendment.id, amendment);
        } else {
            amendments.push_back(amendment);
        }
    }
    m_json.beginObject();
    write(log.engine);
    writeAll("springs", sortedBy(log.springs, [](const Spring& spring) {
                 return std::pair(spring.label.toUtf8(), spring.id);
             }));
    writeAll("fittings", byArrival(log.fittings));
    writeAll("races", sortedBy(log.races, [](const Race& race) { return race.number; }));
    writeAll("inspections", sortedBy(log.inspections, [](const Inspection& inspection) {
                 return std::pair(inspection.inspectedOn.toJulianDay(), inspection.engineRaces);
             }));
    writeAll("sittings", byArrival(log.sittings));
    writeAll("readings", byArrival(log.readings));
    writeAll("running", log.running);
    writeAll("level_changes", log.levelChanges);
    writeAll("planned_races", log.plannedRaces);
    writeAll("shelvings", byArrival(log.shelvings));
    writeAll("decisions", byArrival(log.decisions));
    writeAll("amendments", amendments);
    m_json.key("draft");
    if (draft) {
        write(*draft);
    } else {
        m_json.null();
    }
    m_json.endObject();
}

void LogbookJson::finish() {
    m_json.endArray();
    m_json.key("tester_amendments");
    m_json.beginArray();
    for (const auto& [id, amendment] : m_testerAmendments) {
        write(amendment);
    }
    m_json.endArray();
    m_json.endObject();
    m_json.finish();
}

template <class Record>
void LogbookJson::writeAll(const char* key, const std::vector<Record>& records) {
    m_json.key(key);
    m_json.beginArray();
    for (const Record& record : records) {
        write(record);
    }
    m_json.endArray();
}

void LogbookJson::writePlaces(const std::vector<Place>& places) {
    m_json.beginArray();
    for (const Place& place : places) {
        m_json.string(QString::number(place.cylinder.number()) + valveLetter(place.valve));
    }
    m_json.endArray();
}

/// The facts of the engine stand beside its lists.
void LogbookJson::write(const Engine& engine) {
    constexpr double kMicro = 1e6;
    field("id", engine.id.text());
    field("name", engine.name);
    field("serial", engine.serial);
    m_json.key("layout");
    m_json.beginObject(JsonWriter::Layout::OneLine);
    m_json.key("banks");
    m_json.beginArray();
    for (const Bank& bank : engine.layout.banks) {
        m_json.beginObject();
        field("name", bank.name);
        m_json.key("places");
        writePlaces(bank.places);
        m_json.endObject();
    }
    m_json.endArray();
    m_json.key("firing_order");
    m_json.beginArray();
    for (const Cylinder& cylinder : engine.layout.firingOrder) {
        m_json.integer(cylinder.number());
    }
    m_json.endArray();
    if (!engine.layout.firingIntervals.empty()) {
        m_json.key("firing_intervals"); // tenths of a degree
        m_json.beginArray();
        for (const int interval : engine.layout.firingIntervals) {
            m_json.integer(interval);
        }
        m_json.endArray();
    }
    if (!engine.layout.ownRound.empty()) {
        m_json.key("own_round");
        writePlaces(engine.layout.ownRound);
    }
    m_json.endObject();
    m_json.key("limit_lbf");
    m_json.digits(decimalText(std::llround(engine.rules.limit.inPoundsForce() * kMicro), 6));
    field("races_ahead", engine.rules.racesAhead);
    m_json.key("caution");
    m_json.decimal(probabilityOf(engine.rules.caution), 1);
    field("rpm_ceiling", engine.rpmCeiling);
    field("retired", engine.retired);
    field("springs_run_in", engine.springsRunIn);
    field("exposure_unit", nameOf(engine.exposureUnit));
    field("corrects_temperature", engine.correctsTemperature);
}

void LogbookJson::write(const Tester& tester) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", tester.id.text());
    field("name", tester.name);
    field("range", tester.range);
    field("graduation", tester.graduation);
    field("calibrated_on", tester.calibratedOn);
    field("note", tester.note);
    field("unit", tester.unit ? unitToText(*tester.unit) : QString());
    field("accuracy", tester.accuracy ? accuracyToText(*tester.accuracy) : QString());
    field("zero_offset", tester.zeroOffset ? zeroOffsetToText(*tester.zeroOffset) : QString());
    field("corrects", tester.corrects);
    m_json.endObject();
}

void LogbookJson::write(const Calibration& calibration) {
    m_json.beginObject();
    field("id", calibration.id.text());
    field("tester", calibration.tester.text());
    field("calibrated_on", calibration.calibratedOn);
    field("by", calibration.by);
    field("certificate", calibration.certificate);
    field("due_on", calibration.dueOn);
    field("degree", calibration.degree);
    field("unit", unitToText(calibration.unit));
    m_json.key("points");
    m_json.beginArray();
    for (const CalibrationPoint& point : calibration.points) {
        m_json.beginObject(JsonWriter::Layout::OneLine);
        field("reference", point.reference.text());
        field("indication", point.indication.text());
        m_json.endObject();
    }
    m_json.endArray();
    field("withdrawn", calibration.withdrawn);
    m_json.endObject();
}

/// Readings by spring, then person, then hit; null where there is none yet.
void LogbookJson::write(const RepeatabilityStudy& study) {
    const auto texts = [this](const char* key, const QStringList& all) {
        m_json.key(key);
        m_json.beginArray(JsonWriter::Layout::OneLine);
        for (const QString& text : all) {
            m_json.string(text);
        }
        m_json.endArray();
    };
    m_json.beginObject();
    field("id", study.id.text());
    field("tester", study.tester.text());
    field("studied_on", study.studiedOn);
    texts("springs", study.springs);
    texts("persons", study.persons);
    field("hits", study.hits);
    field("unit", unitToText(study.unit));
    m_json.key("readings");
    m_json.beginArray(JsonWriter::Layout::OneLine);
    for (const std::optional<TypedForce>& reading : study.readings) {
        if (reading) {
            m_json.string(reading->text());
        } else {
            m_json.null();
        }
    }
    m_json.endArray();
    field("note", study.note);
    field("withdrawn", study.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const Spring& spring) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", spring.id.text());
    field("label", spring.label);
    field("part", spring.part);
    field("batch", spring.batch);
    field("note", spring.note);
    field("softening_ppm", spring.softeningPpm);
    m_json.endObject();
}

void LogbookJson::write(const Fitting& fitting) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", fitting.id.text());
    field("spring", fitting.spring.text());
    writePlace(fitting.place);
    field("fitted_on", fitting.fittedOn);
    field("engine_races", fitting.engineRaces);
    field("reason", fitting.reason);
    field("withdrawn", fitting.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const Race& race) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", race.id.text());
    field("race", race.number);
    field("raced_on", race.racedOn);
    field("venue", race.venue);
    field("laps", race.laps);
    field("peak_rpm", race.peakRpm);
    m_json.key("over_rev");
    if (race.overRev) {
        m_json.boolean(*race.overRev);
    } else {
        m_json.null();
    }
    field("note", race.note);
    m_json.endObject();
}

void LogbookJson::write(const Inspection& inspection) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", inspection.id.text());
    field("inspected_on", inspection.inspectedOn);
    field("engine_races", inspection.engineRaces);
    field("closed", inspection.closed);
    m_json.endObject();
}

void LogbookJson::write(const Sitting& sitting) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", sitting.id.text());
    field("inspection", sitting.inspection.text());
    field("tester", sitting.tester ? sitting.tester->text() : QString());
    field("inspector", sitting.inspector);
    m_json.key("engine_temp_c");
    if (sitting.engineTemperature) {
        m_json.digits(decimalText(sitting.engineTemperature->inMilliCelsius(), 3));
    } else {
        m_json.null();
    }
    m_json.endObject();
}

void LogbookJson::write(const Reading& reading) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", reading.id.text());
    field("sitting", reading.sitting.text());
    field("spring", reading.spring.text());
    writePlace(reading.place);
    field("hit", reading.hit);
    field("retest", reading.retest);
    field("value", std::optional(reading.value));
    field("note", reading.note);
    field("kind", nameOf(reading.kind));
    field("amends", reading.amends ? reading.amends->text() : QString());
    writeAuthor(reading.author);
    m_json.endObject();
}

void LogbookJson::write(const Running& running) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", running.id.text());
    field("ran_on", running.ranOn);
    field("engine_races", running.engineRaces);
    field("laps", running.laps);
    m_json.key("part_of_race");
    if (running.raceThousandths) {
        m_json.digits(decimalText(*running.raceThousandths, 3));
    } else {
        m_json.null();
    }
    field("note", running.note);
    field("withdrawn", running.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const LevelChange& change) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", change.id.text());
    field("spring", change.spring.text());
    field("kind", nameOf(change.kind));
    field("changed_on", change.changedOn);
    field("engine_races", change.engineRaces);
    field("note", change.note);
    field("withdrawn", change.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const PlannedRace& race) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", race.id.text());
    field("planned_on", race.plannedOn);
    field("venue", race.venue);
    field("laps", race.laps);
    field("note", race.note);
    field("withdrawn", race.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const Shelving& shelving) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", shelving.id.text());
    field("spring", shelving.spring.text());
    field("to", shelving.to == Storage::Scrap ? QStringLiteral("scrap") : QStringLiteral("shelf"));
    field("shelved_on", shelving.shelvedOn);
    field("pressure", shelving.pressure);
    m_json.key("height_uin");
    if (shelving.height) {
        m_json.digits(QString::number(shelving.height->inMicroInches()));
    } else {
        m_json.null();
    }
    field("races_before", shelving.racesBefore);
    field("reason", shelving.reason);
    field("withdrawn", shelving.withdrawn);
    m_json.endObject();
}

void LogbookJson::write(const Decision& decision) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", decision.id.text());
    field("inspection", decision.inspection.text());
    field("spring", decision.spring.text());
    field("judgement", nameOf(decision.judgement));
    writeAuthor(decision.author);
    m_json.endObject();
}

void LogbookJson::write(const Amendment& amendment) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("id", amendment.id.text());
    field("subject", nameOf(amendment.subject));
    field("record", amendment.record.toString(QUuid::WithoutBraces));
    field("fact", amendment.fact);
    field("old", amendment.oldValue);
    field("new", amendment.newValue);
    writeAuthor(amendment.author);
    m_json.endObject();
}

void LogbookJson::write(const Draft& draft) {
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("inspection", draft.inspection.text());
    writePlace(draft.place);
    field("typed", draft.typed);
    m_json.endObject();
}

void LogbookJson::writePlace(const Place& place) {
    field("cylinder", place.cylinder.number());
    field("valve", valveLetter(place.valve));
}

void LogbookJson::writeAuthor(const Authorship& author) {
    field("who", author.who);
    field("at", author.at.utc);
    field("utc_offset_min", author.at.utcOffsetMinutes);
    field("why", author.why);
}

void LogbookJson::field(const char* key, const QString& text) {
    m_json.key(key);
    m_json.string(text);
}

void LogbookJson::field(const char* key, const QDate& day) {
    m_json.key(key);
    if (day.isNull()) {
        m_json.null();
    } else {
        m_json.string(day.toString(Qt::ISODate));
    }
}

void LogbookJson::field(const char* key, int number) {
    m_json.key(key);
    m_json.integer(number);
}

void LogbookJson::field(const char* key, const std::optional<int>& number) {
    m_json.key(key);
    if (number) {
        m_json.integer(*number);
    } else {
        m_json.null();
    }
}

void LogbookJson::field(const char* key, bool flag) {
    m_json.key(key);
    m_json.boolean(flag);
}

/// A force as typed: {"digits": "121.50", "unit": "lbf"}.
void LogbookJson::field(const char* key, const std::optional<TypedForce>& force) {
    m_json.key(key);
    if (!force) {
        m_json.null();
        return;
    }
    const bool isPoundForce = force->unit() == ForceUnit::PoundForce;
    m_json.beginObject(JsonWriter::Layout::OneLine);
    field("digits", force->text());
    field("unit", isPoundForce ? QStringLiteral("lbf") : QStringLiteral("N"));
    m_json.endObject();
}

} // namespace coilbook
