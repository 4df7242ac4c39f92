#include "core/wording/wording.h"
#include "core/wording/words.h"

#include <algorithm>

namespace coilbook::wording {

namespace {

/// Smallest loss that shows at the one decimal of a reading; less than that is no loss to speak of.
constexpr Force kLeastShown = Force::poundsForce(0.05);

/// Makes the sentences for one spring.
class ReasonSentences {
public:
    ReasonSentences(const Reason& reason, const SpringAssessment& spring, const Quantities& units)
        : m_reason(reason)
        , m_spring(spring)
        , m_units(units) {}

    QString neverRead() const {
        return Words::tr("%1 has no reading yet: test it now, cold, for its baseline.").arg(name());
    }

    QString baselineOnly() const {
        return Words::tr("%1 has its baseline only: test it after the next race to see what it "
                         "loses.")
            .arg(name());
    }

    QString fittedNew() const {
        return Words::tr("%1 was just fitted and has run no race since its baseline: test it "
                         "after the next race.")
            .arg(name());
    }

    QString meansOnly() const {
        if (force(0) < kLeastShown) {
            return Words::tr("%1 shows no loss after %2; one more inspection gives a trend.")
                .arg(name(), races(count(0).value_or(0)));
        }
        return Words::tr("%1 lost about %2 in %3, %4 a race, going by two inspections; one more "
                         "tells how sure that is.")
            .arg(name(), amount(0), races(count(0).value_or(0)), m_units.rateWithUnit(force(1)));
    }

    QString lossAndRate() const {
        if (force(0) < kLeastShown) {
            return Words::tr("%1 shows no loss after %2%3.")
                .arg(name(), races(count(0).value_or(0)), likelyRange());
        }
        return Words::tr("%1 lost about %2 in %3%4, %5 a race.",
                         "4: nothing, or ' (likely between … and …)'")
            .arg(name(), amount(0), races(count(0).value_or(0)), likelyRange(),
                 m_units.rateWithUnit(force(1)));
    }

    QString reachesLimit() const {
        const std::optional<int> median = count(1);
        if (!median) {
            return Words::tr("It may reach %1 in %2, but more likely not within 60 races.")
                .arg(amount(0), races(count(0).value_or(0)));
        }
        if (*median == 0) {
            return Words::tr("It has most likely reached %1 by now.").arg(amount(0));
        }
        const QString soonest = QString::number(count(0).value_or(0));
        if (!count(2)) {
            return Words::tr("It reaches %1 in about %2 (%3 to more than 60).")
                .arg(amount(0), races(*median), soonest);
        }
        if (*count(2) == count(0)) {
            return Words::tr("It reaches %1 in about %2.").arg(amount(0), races(*median));
        }
        return Words::tr("It reaches %1 in about %2 (%3 to %4).")
            .arg(amount(0), races(*median), soonest, QString::number(*count(2)));
    }

    QString notWithinHorizon() const {
        return Words::tr("As it goes now it does not reach %1 within 60 races.").arg(amount(0));
    }

    QString pastByMeasurement() const {
        if (m_spring.pastBy == PastBy::Measured || m_spring.offTrend) { // to be tested again first
            return Words::tr("Its newest reading lies %1 below its baseline; the limit is %2.")
                .arg(amount(0), amount(1));
        }
        return Words::tr("Its newest reading lies %1 below its baseline; the limit is %2: swap it "
                         "before the next race.")
            .arg(amount(0), amount(1));
    }

    QString pastByEstimate() const {
        if (m_spring.pastBy == PastBy::Both) {
            return Words::tr("Its trend agrees: about %1 lost.").arg(amount(0));
        }
        return Words::tr("Going by its trend it has lost about %1 and is likely past the limit of "
                         "%2, though its newest reading is not: swap it before the next race.")
            .arg(amount(0), amount(1));
    }

    QString testAgain() const {
        return Words::tr("Test again before swapping: the newest reading alone says so and the "
                         "trend does not, and one poor push of the tester is enough for that.");
    }

    QString testAgainWithoutTrend() const {
        return Words::tr("Test again before swapping: there is no trend yet to bear the reading "
                         "out, and one poor push of the tester is enough for it.");
    }

    QString dueWithin() const {
        const int ahead = count(0).value_or(0);
        if (ahead == 0) {
            return Words::tr("It is at least as likely as not past %1: plan its swap now.")
                .arg(amount(0));
        }
        return Words::tr("It is at least as likely as not to reach %1 within %2: plan its swap.")
            .arg(amount(0), races(ahead));
    }

    QString offTrend() const {
        return Words::tr("Its newest reading, %1, fell below %2, the lowest that its own trend "
                         "allows: test it again, and if that holds, take it out and look for a "
                         "crack.")
            .arg(amount(0), amount(1));
    }

    QString inspectionShifted() const {
        if (force(0) < Force()) {
            return Words::tr("All springs read about %1 low in the newest inspection: check the "
                             "tester against a known weight, then test again.")
                .arg(m_units.forceWithUnit(-force(0)));
        }
        return Words::tr("All springs read about %1 high in the newest inspection: check the "
                         "tester against a known weight, then test again.")
            .arg(amount(0));
    }

    QString overRev() const {
        const QString race = QString::number(count(0).value_or(0));
        if (count(1).value_or(0) == 0) {
            return Words::tr("The engine was over-revved in race %1 and this spring has not been "
                             "tested since: test it before the next race.")
                .arg(race);
        }
        return Words::tr("The engine was over-revved in race %1 and this spring was read once "
                         "since: compare that reading with its trend.")
            .arg(race);
    }

    QString fitFailed() const {
        return Words::tr("No trend can be drawn through the readings of %1, so only what was "
                         "measured counts: test it after the next race.")
            .arg(name());
    }

private:
    QString name() const { return place(m_spring.place); }

    Force force(std::size_t index) const {
        return index < m_reason.forces.size() ? m_reason.forces[index] : Force();
    }

    QString amount(std::size_t index) const { return m_units.forceWithUnit(force(index)); }

    std::optional<int> count(std::size_t index) const {
        return index < m_reason.counts.size() ? m_reason.counts[index] : std::nullopt;
    }

    /// A loss cannot be negative to the reader: the range begins at 0 where the fit allows less.
    QString likelyRange() const {
        if (!m_spring.loss) {
            return {};
        }
        const Force low = std::max(m_spring.loss->low90, Force());
        const Force high = std::max(m_spring.loss->high90, Force());
        return Words::tr(" (likely between %1 and %2)", "begins with a space; follows an amount")
            .arg(m_units.force(low), m_units.forceWithUnit(high));
    }

    const Reason& m_reason;
    const SpringAssessment& m_spring;
    const Quantities& m_units;
};

} // namespace

QString reason(const Reason& reason, const SpringAssessment& spring,
               const Assessment& /*assessment*/, const Quantities& quantities) {
    const ReasonSentences sentences(reason, spring, quantities);
    switch (reason.kind) {
    case ReasonKind::NeverRead:
        return sentences.neverRead();
    case ReasonKind::BaselineOnly:
        return sentences.baselineOnly();
    case ReasonKind::FittedNew:
        return sentences.fittedNew();
    case ReasonKind::MeansOnly:
        return sentences.meansOnly();
    case ReasonKind::LossAndRate:
        return sentences.lossAndRate();
    case ReasonKind::ReachesLimit:
        return sentences.reachesLimit();
    case ReasonKind::NotWithinHorizon:
        return sentences.notWithinHorizon();
    case ReasonKind::PastByMeasurement:
        return sentences.pastByMeasurement();
    case ReasonKind::PastByEstimate:
        return sentences.pastByEstimate();
    case ReasonKind::TestAgainBeforeSwapping:
        return spring.lossPerRace ? sentences.testAgain() : sentences.testAgainWithoutTrend();
    case ReasonKind::DueWithin:
        return sentences.dueWithin();
    case ReasonKind::OffTrend:
        return sentences.offTrend();
    case ReasonKind::InspectionShifted:
        return sentences.inspectionShifted();
    case ReasonKind::OverRev:
        return sentences.overRev();
    case ReasonKind::FitFailed:
        return sentences.fitFailed();
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
