#pragma once

#include "core/services/round_order.h"
#include "core/units/force.h"
#include "core/wording/quantities.h"

#include <QObject>
#include <QSettings>
#include <QString>
#include <QStringList>

namespace coilbook {

enum class ColourScheme { System, Light, Dark };
enum class Paper { A4, Letter };

/// What this user of this machine prefers; nothing of it is part of a logbook. Built by `app`
/// around the settings file and handed to whoever needs it.
class Preferences : public QObject {
    Q_OBJECT
public:
    /// Does not take ownership of `settings`, which must outlive it.
    explicit Preferences(QSettings& settings, QObject* parent = nullptr);

    [[nodiscard]] ForceUnit forceUnit() const;
    void setForceUnit(ForceUnit unit);

    [[nodiscard]] ColourScheme colourScheme() const;
    void setColourScheme(ColourScheme scheme);

    /// Text size in percent of the system's: 100, 125 or 150.
    [[nodiscard]] int textPercent() const;
    void setTextPercent(int percent);

    [[nodiscard]] Paper paper() const;
    void setPaper(Paper paper);

    /// Who enters readings and amendments on this machine; may be empty.
    [[nodiscard]] QString personName() const;
    void setPersonName(const QString& name);

    /// The logbook last used; empty at the first start.
    [[nodiscard]] QString lastLogbook() const;
    void setLastLogbook(const QString& path);

    /// Logbooks opened before, the newest first, at most eight.
    [[nodiscard]] QStringList recentLogbooks() const;
    void addRecentLogbook(const QString& path);

    /// A folder, on a stick say, that gets a second automatic backup whenever it is there; may be
    /// empty.
    [[nodiscard]] QString secondBackupPlace() const;
    void setSecondBackupPlace(const QString& folder);

    /// The engine that was shown last in that logbook, as the text of its id.
    [[nodiscard]] QString lastEngine() const;
    void setLastEngine(const QString& id);

    /// The order in which rounds were walked last.
    [[nodiscard]] RoundOrder roundOrder() const;
    void setRoundOrder(RoundOrder order);

    /// Whether the bench tells by sound what became of a reading.
    [[nodiscard]] bool benchSounds() const;
    void setBenchSounds(bool on);

    [[nodiscard]] QByteArray windowGeometry() const;
    void setWindowGeometry(const QByteArray& geometry);

    /// Numbers and dates in the user's unit and locale.
    [[nodiscard]] Quantities quantities() const;

Q_SIGNALS:
    void changed();
    void secondBackupPlaceChanged();

private:
    QSettings& m_settings;
};

} // namespace coilbook
