#include "ui/dialogs/springs_panel.h"

#include "core/domain/tester_accuracy.h"
#include "core/support/text.h"
#include "core/testers/spring_temperature.h"
#include "core/wording/wording.h"
#include "ui/dialogs/fault_form.h"
#include "ui/preferences.h"

#include <QLineEdit>
#include <QLocale>

#include <algorithm>

namespace coilbook {

namespace {

/// 1e-6 per °C is 0.01 % per 100 °C.
constexpr int kThousandthsPerPpm = 10;

QString softeningText(const std::optional<int>& ppm) {
    return ppm ? percentageToText({*ppm * kThousandthsPerPpm})
                     .replace(QLatin1Char('.'), QLocale().decimalPoint())
               : QString();
}

} // namespace

SpringsPanel::SpringsPanel(LogbookSession& session, Preferences& preferences, QWidget* parent)
    : RecordPanel(session, preferences, parent)
    , m_label(new QLineEdit(m_form))
    , m_part(new QLineEdit(m_form))
    , m_batch(new QLineEdit(m_form))
    , m_note(new QLineEdit(m_form))
    , m_softening(new QLineEdit(m_form)) {
    m_label->setObjectName(QStringLiteral("label"));
    m_part->setObjectName(QStringLiteral("part"));
    m_batch->setObjectName(QStringLiteral("batch"));
    m_form->addField(tr("&Label"), m_label);
    m_form->addField(tr("&Part"), m_part);
    m_form->addField(tr("B&atch"), m_batch);
    m_softening->setObjectName(QStringLiteral("softening"));
    m_softening->setPlaceholderText(
        tr("%1, as spring steel (from memory)").arg(softeningText(kSofteningOfSpringSteelPpm)));
    m_form->addField(tr("Loses by &heat, % per 100 °C"), m_softening);
    m_form->addField(tr("&Note"), m_note);
    build({tr("Spring"), tr("Place"), tr("Part"), tr("Batch")}, {},
          tr("No springs yet. They come with the engine's set-up, with the first inspection at the "
             "bench, or with an import."));
}

std::vector<RecordPanel::Line> SpringsPanel::lines() const {
    std::vector<Line> result;
    const auto log = m_session.log();
    const auto history = m_session.history();
    if (!log || !history) {
        return result;
    }
    for (const Spring& spring : log->springs) {
        const auto life = std::find_if(
            history->lives.begin(), history->lives.end(),
            [&](const HistoryLife& candidate) { return candidate.spring == spring.id; });
        QString place = tr("taken out");
        if (life != history->lives.end() && life->fitted) {
            place = placeText(life->place);
        }
        result.push_back({spring.id.uuid(), {spring.label, place, spring.part, spring.batch}});
    }
    return result;
}

void SpringsPanel::fill(const QUuid& record) {
    Spring spring;
    if (const auto log = m_session.log()) {
        const auto found =
            std::find_if(log->springs.begin(), log->springs.end(),
                         [&](const Spring& known) { return known.id.uuid() == record; });
        if (found != log->springs.end()) {
            spring = *found;
        }
    }
    m_label->setText(spring.label);
    m_part->setText(spring.part);
    m_batch->setText(spring.batch);
    m_note->setText(spring.note);
    m_softening->setText(softeningText(spring.softeningPpm));
}

std::optional<Change> SpringsPanel::read(const QUuid& record,
                                         const std::optional<Authorship>& author) {
    Spring spring;
    spring.id = SpringId(record);
    spring.label = normalised(m_label->text());
    spring.part = normalised(m_part->text());
    spring.batch = normalised(m_batch->text());
    spring.note = normalised(m_note->text());
    if (spring.label.isEmpty()) {
        m_form->showFault(
            m_label,
            wording::sentence(fail(LogbookFault::EmptyName, {QStringLiteral("spring")}).value()));
        return std::nullopt;
    }
    const QString softening = m_softening->text().trimmed();
    if (!softening.isEmpty()) {
        // Thousandths of a percent per 100 °C are tens of millionths per °C.
        const std::optional<Percentage> percent = percentageFromText(softening);
        if (!percent || percent->thousandths % kThousandthsPerPpm != 0) {
            m_form->showFault(m_softening, tr("Give a percentage such as 2.5, with at most two "
                                              "decimals, or leave this empty."));
            return std::nullopt;
        }
        spring.softeningPpm = percent->thousandths / kThousandthsPerPpm;
    }
    return Change(AmendSpring{spring, author.value_or(Authorship{})});
}

QWidget* SpringsPanel::fieldAt(LogbookFault fault) const {
    return fault == LogbookFault::EmptyName || fault == LogbookFault::NameDiffersInCaseOnly
               ? m_label
               : nullptr;
}

} // namespace coilbook
