#include "core/wording/estimate_words.h"
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

    QString lossAndRate() const {
        if (force(0) < kLeastShown) {
            return Words::tr("%1 shows no loss after %2%3.").arg(name(), raced(), likelyRange());
        }
        return Words::tr("%1 lost about %2 in %3%4, %5 a race.",
                         "4: nothing, or ' (likely between … and …)'")
            .arg(name(), amount(0), raced(), likelyRange(), m_units.rateWithUnit(force(1)));
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
        if (isMeasuredAnew()) {
            return Words::tr("As measured it has lost %1, the change of its level taken out; the "
                             "limit is %2.")
                .arg(amount(0), amount(1));
        }
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
        return Words::tr("Its newest reading, %1, fell below what its own history allows: test it "
                         "again now, and if that holds, take it out and look for a crack.")
            .arg(amount(0));
    }

    QString provisional() const {
        return Words::tr("This rests on few inspections, so mostly on what such springs usually "
                         "do: each race makes it surer.");
    }

    QString misreadSetAside() const {
        const QString race = QString::number(count(0).value_or(0));
        if (force(1) < Force()) {
            return Words::tr("The reading of %1 after race %2 lies about %3 below its trend and "
                             "is not counted; it stays in the logbook.")
                .arg(amount(0), race, m_units.forceWithUnit(-force(1)));
        }
        return Words::tr("The reading of %1 after race %2 lies about %3 above its trend and is "
                         "not counted; it stays in the logbook.")
            .arg(amount(0), race, amount(1));
    }

    QString hitsSetAside() const {
        const int hits = count(0).value_or(0);
        if (hits == 1) {
            return Words::tr("One hit lies too far from the others of its inspection and is not "
                             "counted; it stays in the logbook.");
        }
        return Words::tr("%n hits lie too far from the others of their inspections and are not "
                         "counted; they stay in the logbook.",
                         nullptr, hits);
    }

    QString suddenDrop() const {
        return Words::tr("It lost about %1 at once by race %2, beside its steady wear: look for a "
                         "crack, and at its seat and retainer.")
            .arg(amount(0), QString::number(count(0).value_or(0)));
    }

    QString setAsideByUser() const {
        return Words::tr("The reading of %1 after race %2 was set aside by the user and is not "
                         "counted; it stays in the logbook.")
            .arg(amount(0), QString::number(count(0).value_or(0)));
    }

    QString dropDenied() const {
        return Words::tr("The reading of %1 after race %2 was tested again and is a misread by "
                         "the user's word: it is not counted and stays in the logbook.")
            .arg(amount(0), QString::number(count(0).value_or(0)));
    }

    QString dropConfirmed() const {
        return Words::tr("It lost about %1 at once by race %2, a drop confirmed by the user: take "
                         "it out and look for a crack, and at its seat and retainer.")
            .arg(amount(0), QString::number(count(0).value_or(0)));
    }

    QString readingKept() const {
        return Words::tr("The reading of %1 after race %2 is kept by the user, whatever the trend "
                         "makes of it.")
            .arg(amount(0), QString::number(count(0).value_or(0)));
    }

    QString measuredAnew() const {
        const QString race = QString::number(count(0).value_or(0));
        if (force(0) < kLeastShown) {
            return Words::tr("%1: the measured loss starts again from the reading after race %2; "
                             "the step between is no wear.")
                .arg(workDone(), race);
        }
        return Words::tr("%1: the measured loss starts again from the reading after race %2, with "
                         "the %3 measured before; the step between is no wear.")
            .arg(workDone(), race, amount(0));
    }

    QString lapsMissing() const {
        const int missing = count(0).value_or(0);
        if (missing == 1) {
            return Words::tr("Its wear goes by races and not by laps, because one race has no "
                             "laps noted: write them in.");
        }
        return Words::tr("Its wear goes by races and not by laps, because %n races have no laps "
                         "noted: write them in.",
                         nullptr, missing);
    }

    static QString runningLeftOut() {
        return Words::tr("Running noted in laps is not counted, because no race has its laps "
                         "noted to compare them with: write those in, or note the running as a "
                         "part of a race.");
    }

    QString pendingDrop() const {
        return Words::tr("Its newest reading lies about %1 below its trend: test it again now. If "
                         "that holds, take the spring out and look for a crack; if not, the "
                         "re-test replaces the reading.")
            .arg(amount(0));
    }

    QString inspectionShifted() const {
        return Words::tr("The newest inspection reads about %1 on all springs, so its readings "
                         "alone are no reason for a swap: look at the tester and test again.",
                         "an amount low or high")
            .arg(lowOrHigh(force(0), m_units));
    }

    QString earlierShifted() const {
        return shiftAllowedFor(count(0).value_or(0), force(0), m_units);
    }

    QString overRev() const {
        const QString race = QString::number(count(0).value_or(0));
        const bool untested = count(1).value_or(0) == 0;
        const QString said =
            untested ? Words::tr("The engine was over-revved in race %1 and this spring has not "
                                 "been tested since: test it before the next race.")
                     : Words::tr("The engine was over-revved in race %1 and this spring was read "
                                 "once since: compare that reading with its trend.");
        if (m_reason.forces.size() != 3) {
            return said.arg(race);
        }
        const QString cost =
            untested ? Words::tr("Such an over-rev usually costs about %1 (likely between %2 and "
                                 "%3).")
                     : Words::tr("As far as can be told it cost about %1 (likely between %2 and "
                                 "%3).");
        return said.arg(race) + QLatin1Char(' ') +
               cost.arg(amount(0), m_units.force(force(1)), amount(2));
    }

    QString overRevCost() const {
        return Words::tr("The over-rev in race %1 cost it about %2 (likely between %3 and %4).")
            .arg(QString::number(count(0).value_or(0)), amount(0), m_units.force(force(1)),
                 amount(2));
    }

    QString fitFailed() const {
        return Words::tr("No trend can be drawn through the readings of %1, so only what was "
                         "measured counts: test it after the next race.")
            .arg(name());
    }

private:
    /// "9 races", with other running "9 races and running worth 0.4 races".
    QString raced() const {
        const QString raced = races(count(0).value_or(0));
        const std::optional<int> running = count(1);
        return running ? Words::tr("%1 and running worth %2 races")
                             .arg(raced, QLocale::c().toString(*running / 1000.0, 'g', 3))
                       : raced;
    }

    bool isMeasuredAnew() const {
        return std::any_of(
            m_spring.reasons.begin(), m_spring.reasons.end(),
            [](const Reason& other) { return other.kind == ReasonKind::MeasuredAnew; });
    }

    QString workDone() const {
        switch (static_cast<LevelChangeKind>(count(1).value_or(0))) {
        case LevelChangeKind::Shim:
            return Words::tr("Its shims were changed", "begins a sentence");
        case LevelChangeKind::ValveSeatWork:
            return Words::tr("Its valve seat was worked on", "begins a sentence");
        case LevelChangeKind::Retainer:
            return Words::tr("It got another retainer", "begins a sentence");
        case LevelChangeKind::Move:
            return Words::tr("It was moved to another place", "begins a sentence");
        case LevelChangeKind::Other:
            return Words::tr("Other work changed its pressure", "begins a sentence");
        }
        Q_UNREACHABLE();
    }

    QString name() const { return place(m_spring.place); }

    Force force(std::size_t index) const {
        return index < m_reason.forces.size() ? m_reason.forces[index] : Force();
    }

    QString amount(std::size_t index) const { return m_units.forceWithUnit(force(index)); }

    std::optional<int> count(std::size_t index) const {
        return index < m_reason.counts.size() ? m_reason.counts[index] : std::nullopt;
    }

    QString likelyRange() const {
        if (!m_spring.loss) {
            return {};
        }
        const ForceEstimate loss = toldLoss(*m_spring.loss);
        return Words::tr(" (likely between %1 and %2)", "begins with a space; follows an amount")
            .arg(m_units.force(loss.low90), m_units.forceWithUnit(loss.high90));
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
    case ReasonKind::EarlierShifted:
        return sentences.earlierShifted();
    case ReasonKind::OverRev:
        return sentences.overRev();
    case ReasonKind::OverRevCost:
        return sentences.overRevCost();
    case ReasonKind::Provisional:
        return sentences.provisional();
    case ReasonKind::MisreadSetAside:
        return sentences.misreadSetAside();
    case ReasonKind::HitsSetAside:
        return sentences.hitsSetAside();
    case ReasonKind::SuddenDrop:
        return sentences.suddenDrop();
    case ReasonKind::PendingDrop:
        return sentences.pendingDrop();
    case ReasonKind::SetAsideByUser:
        return sentences.setAsideByUser();
    case ReasonKind::DropDenied:
        return sentences.dropDenied();
    case ReasonKind::DropConfirmed:
        return sentences.dropConfirmed();
    case ReasonKind::ReadingKept:
        return sentences.readingKept();
    case ReasonKind::MeasuredAnew:
        return sentences.measuredAnew();
    case ReasonKind::LapsMissing:
        return sentences.lapsMissing();
    case ReasonKind::RunningLeftOut:
        return ReasonSentences::runningLeftOut();
    case ReasonKind::FitFailed:
        return sentences.fitFailed();
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
