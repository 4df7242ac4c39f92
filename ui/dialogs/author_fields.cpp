#include "ui/dialogs/author_fields.h"

#include "core/support/clock.h"
#include "core/support/text.h"
#include "ui/dialogs/fault_form.h"

#include <QLineEdit>

namespace coilbook {

AuthorFields::AuthorFields(FaultForm& form, Preferences& preferences)
    : QObject(&form)
    , m_preferences(preferences)
    , m_why(new QLineEdit(&form))
    , m_who(new QLineEdit(preferences.personName(), &form)) {
    m_why->setObjectName(QStringLiteral("why"));
    m_who->setObjectName(QStringLiteral("who"));
    m_why->setPlaceholderText(tr("For instance: wrong day written down"));
    form.addField(tr("Reason for the &change"), m_why);
    form.addField(tr("Changed &by"), m_who);
}

Authorship AuthorFields::sign() {
    const QString who = normalised(m_who->text());
    if (!who.isEmpty() && who != m_preferences.personName()) {
        m_preferences.setPersonName(who);
    }
    return {who, SystemClock().now(), normalised(m_why->text())};
}

bool AuthorFields::hasReason() const {
    return !normalised(m_why->text()).isEmpty();
}

void AuthorFields::clearReason() {
    m_why->clear();
}

void AuthorFields::setEnabled(bool enabled) {
    m_why->setEnabled(enabled);
    m_who->setEnabled(enabled);
}

} // namespace coilbook
