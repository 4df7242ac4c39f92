#pragma once

#include "core/support/uuid7.h"

#include <QHashFunctions>
#include <QString>
#include <QUuid>

#include <compare>

namespace coilbook {

/// The identity of a record of one kind. Made by the program before the record is first saved, so
/// that a save may be repeated after any doubt.
template <class Tag>
class Id {
public:
    Id() = default;

    explicit Id(const QUuid& uuid)
        : m_uuid(uuid) {}

    [[nodiscard]] static Id make() { return Id(makeUuid7()); }

    /// The null id if the text is not a UUID.
    [[nodiscard]] static Id fromText(const QString& text) { return Id(QUuid::fromString(text)); }

    [[nodiscard]] QString text() const { return m_uuid.toString(QUuid::WithoutBraces); }

    [[nodiscard]] const QUuid& uuid() const { return m_uuid; }

    [[nodiscard]] bool isNull() const { return m_uuid.isNull(); }

    friend bool operator==(const Id& a, const Id& b) { return a.m_uuid == b.m_uuid; }

    friend std::strong_ordering operator<=>(const Id& a, const Id& b) {
        if (a.m_uuid == b.m_uuid) {
            return std::strong_ordering::equal;
        }
        return a.m_uuid < b.m_uuid ? std::strong_ordering::less : std::strong_ordering::greater;
    }

    friend size_t qHash(const Id& id, size_t seed = 0) { return qHash(id.m_uuid, seed); }

private:
    QUuid m_uuid;
};

template <class Tag>
struct IdHash {
    size_t operator()(const Id<Tag>& id) const { return qHash(id); }
};

using EngineId = Id<struct EngineTag>;
using RaceId = Id<struct RaceTag>;
using InspectionId = Id<struct InspectionTag>;
using SittingId = Id<struct SittingTag>;
using ReadingId = Id<struct ReadingTag>;
using SpringId = Id<struct SpringTag>;
using TesterId = Id<struct TesterTag>;
using FittingId = Id<struct FittingTag>;
using RunningId = Id<struct RunningTag>;
using LevelChangeId = Id<struct LevelChangeTag>;
using CalibrationId = Id<struct CalibrationTag>;
using StudyId = Id<struct StudyTag>;
using PlannedRaceId = Id<struct PlannedRaceTag>;
using ShelvingId = Id<struct ShelvingTag>;
using DecisionId = Id<struct DecisionTag>;
using AmendmentId = Id<struct AmendmentTag>;

} // namespace coilbook
