#include "ui/preferences.h"

namespace coilbook {

namespace {

const QString kUnit = QStringLiteral("units/force");
const QString kScheme = QStringLiteral("look/scheme");
const QString kTextPercent = QStringLiteral("look/text_percent");
const QString kPaper = QStringLiteral("print/paper");
const QString kPerson = QStringLiteral("person/name");
const QString kLastLogbook = QStringLiteral("last/logbook");
const QString kRecent = QStringLiteral("last/recent");
const QString kLastEngine = QStringLiteral("last/engine");
const QString kSecondBackup = QStringLiteral("backup/second_place");
const QString kBenchSounds = QStringLiteral("bench/sounds");
const QString kRoundOrder = QStringLiteral("bench/round_order");
const QString kGeometry = QStringLiteral("window/geometry");

constexpr qsizetype kMostRecent = 8;

} // namespace

Preferences::Preferences(QSettings& settings, QObject* parent)
    : QObject(parent)
    , m_settings(settings) {}

ForceUnit Preferences::forceUnit() const {
    return m_settings.value(kUnit).toString() == QLatin1String("N") ? ForceUnit::Newton
                                                                    : ForceUnit::PoundForce;
}

void Preferences::setForceUnit(ForceUnit unit) {
    m_settings.setValue(kUnit,
                        unit == ForceUnit::Newton ? QStringLiteral("N") : QStringLiteral("lbf"));
    Q_EMIT changed();
}

ColourScheme Preferences::colourScheme() const {
    const QString name = m_settings.value(kScheme).toString();
    if (name == QLatin1String("light")) {
        return ColourScheme::Light;
    }
    return name == QLatin1String("dark") ? ColourScheme::Dark : ColourScheme::System;
}

void Preferences::setColourScheme(ColourScheme scheme) {
    switch (scheme) {
    case ColourScheme::Light:
        m_settings.setValue(kScheme, QStringLiteral("light"));
        break;
    case ColourScheme::Dark:
        m_settings.setValue(kScheme, QStringLiteral("dark"));
        break;
    case ColourScheme::System:
        m_settings.remove(kScheme);
        break;
    }
    Q_EMIT changed();
}

int Preferences::textPercent() const {
    const int percent = m_settings.value(kTextPercent, 100).toInt();
    return percent == 125 || percent == 150 ? percent : 100;
}

void Preferences::setTextPercent(int percent) {
    m_settings.setValue(kTextPercent, percent);
    Q_EMIT changed();
}

Paper Preferences::paper() const {
    const QString name = m_settings.value(kPaper).toString();
    if (name.isEmpty()) {
        return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? Paper::Letter
                                                                          : Paper::A4;
    }
    return name == QLatin1String("letter") ? Paper::Letter : Paper::A4;
}

void Preferences::setPaper(Paper paper) {
    m_settings.setValue(kPaper,
                        paper == Paper::Letter ? QStringLiteral("letter") : QStringLiteral("a4"));
    Q_EMIT changed();
}

QString Preferences::personName() const {
    return m_settings.value(kPerson).toString();
}

void Preferences::setPersonName(const QString& name) {
    m_settings.setValue(kPerson, name);
    Q_EMIT changed();
}

QString Preferences::lastLogbook() const {
    return m_settings.value(kLastLogbook).toString();
}

void Preferences::setLastLogbook(const QString& path) {
    m_settings.setValue(kLastLogbook, path);
}

QString Preferences::secondBackupPlace() const {
    return m_settings.value(kSecondBackup).toString();
}

void Preferences::setSecondBackupPlace(const QString& folder) {
    m_settings.setValue(kSecondBackup, folder);
    Q_EMIT secondBackupPlaceChanged();
}

QStringList Preferences::recentLogbooks() const {
    return m_settings.value(kRecent).toStringList();
}

void Preferences::addRecentLogbook(const QString& path) {
    QStringList paths = recentLogbooks();
    paths.removeAll(path);
    paths.prepend(path);
    m_settings.setValue(kRecent, QStringList(paths.mid(0, kMostRecent)));
    Q_EMIT changed();
}

QString Preferences::lastEngine() const {
    return m_settings.value(kLastEngine).toString();
}

void Preferences::setLastEngine(const QString& id) {
    m_settings.setValue(kLastEngine, id);
}

RoundOrder Preferences::roundOrder() const {
    return roundOrderFromKey(m_settings.value(kRoundOrder).toString());
}

void Preferences::setRoundOrder(RoundOrder order) {
    m_settings.setValue(kRoundOrder, keyOf(order));
}

bool Preferences::benchSounds() const {
    return m_settings.value(kBenchSounds, false).toBool();
}

void Preferences::setBenchSounds(bool on) {
    m_settings.setValue(kBenchSounds, on);
    Q_EMIT changed();
}

QByteArray Preferences::windowGeometry() const {
    return m_settings.value(kGeometry).toByteArray();
}

void Preferences::setWindowGeometry(const QByteArray& geometry) {
    m_settings.setValue(kGeometry, geometry);
}

Quantities Preferences::quantities() const {
    return Quantities(forceUnit(), QLocale());
}

} // namespace coilbook
