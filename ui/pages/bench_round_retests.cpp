// The part of the round that tests the short list of its summary again; see bench_round.h.
#include "core/services/logbook_session.h"
#include "ui/pages/bench_message.h"
#include "ui/pages/bench_reading_panel.h"
#include "ui/pages/bench_round.h"
#include "ui/widgets/reading_field.h"

namespace coilbook {

void BenchRound::startRetests() {
    if (m_saving) {
        return;
    }
    const std::shared_ptr<const Assessment> assessment = m_session.assessment();
    const RoundClosing closing =
        closingOf(*m_round, rules().limit, assessment.get(), m_review ? &*m_review : nullptr);
    m_retests.clear();
    for (const std::size_t index : closing.retest) {
        m_retests.push_back(m_round->stops()[index].place);
    }
    if (!m_retests.empty()) {
        takeNextRetest();
        m_panel->message().say(BenchMessage::Kind::Hint,
                               tr("Re-test: the next hits count, the first ones are crossed out."));
    }
}

void BenchRound::takeNextRetest() {
    while (!m_retests.empty()) {
        if (const std::optional<std::size_t> index = m_round->indexOf(m_retests.front())) {
            enter(*index);
            setRetest(true);
            saveDraft();
            return;
        }
        m_retests.erase(m_retests.begin());
    }
    m_panel->field().releaseAndForget();
    showSummary();
}

} // namespace coilbook
