#pragma once

#include "core/domain/inspection.h"
#include "ui/preferences.h"

#include <QObject>

class QLineEdit;

namespace coilbook {

class FaultForm;

/// The two fields at the foot of every form that amends something: why, and who. Who is known from
/// the preferences and remembered there.
class AuthorFields : public QObject {
    Q_OBJECT
public:
    /// Adds the fields to `form`, which owns them and this.
    AuthorFields(FaultForm& form, Preferences& preferences);

    /// Who and why as typed, and this moment. Whoever amends is offered by name from then on.
    [[nodiscard]] Authorship sign();
    [[nodiscard]] bool hasReason() const;
    /// Empties the reason for the next amendment, and keeps who.
    void clearReason();
    /// For forms that also take new records, which need no reason.
    void setEnabled(bool enabled);

    [[nodiscard]] QLineEdit* whyField() const { return m_why; }

private:
    Preferences& m_preferences;
    QLineEdit* m_why;
    QLineEdit* m_who;
};

} // namespace coilbook
