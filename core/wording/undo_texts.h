#pragma once

#include "core/domain/place.h"

#include <QDate>
#include <QString>

/// What Undo and Redo name in the menu, and the reason that an undo leaves in the history.
namespace coilbook::wording {

[[nodiscard]] QString undoReading(const Place& place);
[[nodiscard]] QString undoCorrection(const Place& place);
[[nodiscard]] QString undoSwap(const Place& place);
[[nodiscard]] QString undoEngine();
[[nodiscard]] QString undoRace(int number);
[[nodiscard]] QString undoInspection(const QDate& on);
[[nodiscard]] QString undoSitting();
[[nodiscard]] QString undoSpring(const QString& label);
[[nodiscard]] QString undoTester(const QString& name);
[[nodiscard]] QString undoCalibration(const QDate& on);
[[nodiscard]] QString undoStudy(const QDate& on);

[[nodiscard]] QString undoDecision(const QString& spring);
[[nodiscard]] QString undoPlannedRace(const QDate& on);
[[nodiscard]] QString undoShelving(const QString& spring);
[[nodiscard]] QString undoRunning(const QDate& on);
[[nodiscard]] QString undoLevelChange(const QString& spring);

[[nodiscard]] QString undoneReason();
[[nodiscard]] QString redoneReason();

} // namespace coilbook::wording
