#include "core/wording/undo_texts.h"

#include <QCoreApplication>

namespace coilbook::wording {

namespace {

QString translated(const char* text) {
    return QCoreApplication::translate("Undo", text);
}

} // namespace

QString undoReading(const Place& place) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Reading %1")).arg(placeText(place));
}

QString undoCorrection(const Place& place) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Correction %1")).arg(placeText(place));
}

QString undoSwap(const Place& place) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Swap at %1")).arg(placeText(place));
}

QString undoEngine() {
    return translated(QT_TRANSLATE_NOOP("Undo", "Engine settings"));
}

QString undoRace(int number) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Race %1")).arg(number);
}

QString undoInspection(const QDate& on) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Inspection of %1")).arg(on.toString(Qt::ISODate));
}

QString undoSitting() {
    return translated(QT_TRANSLATE_NOOP("Undo", "Tester and inspector"));
}

QString undoSpring(const QString& label) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Spring %1")).arg(label);
}

QString undoTester(const QString& name) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Tester %1")).arg(name);
}

QString undoCalibration(const QDate& on) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Calibration of %1")).arg(on.toString(Qt::ISODate));
}

QString undoStudy(const QDate& on) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Repeatability study of %1"))
        .arg(on.toString(Qt::ISODate));
}

QString undoDecision(const QString& spring) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Say about spring %1")).arg(spring);
}

QString undoPlannedRace(const QDate& on) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Planned race of %1"))
        .arg(on.toString(Qt::ISODate));
}

QString undoShelving(const QString& spring) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Shelf: spring %1")).arg(spring);
}

QString undoRunning(const QDate& on) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Running of %1")).arg(on.toString(Qt::ISODate));
}

QString undoLevelChange(const QString& spring) {
    return translated(QT_TRANSLATE_NOOP("Undo", "Level change of spring %1")).arg(spring);
}

QString undoneReason() {
    return translated(QT_TRANSLATE_NOOP("Undo", "Undone"));
}

QString redoneReason() {
    return translated(QT_TRANSLATE_NOOP("Undo", "Done again after an undo"));
}

} // namespace coilbook::wording
