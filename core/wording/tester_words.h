#pragma once

#include "core/domain/tester_accuracy.h"
#include "core/testers/calibration_picture.h"
#include "core/testers/reading_corrections.h"
#include "core/testers/study_result.h"
#include "core/testers/tester_budget.h"
#include "core/wording/quantities.h"

#include <QString>
#include <QStringList>

namespace coilbook::wording {

/// `grade 2A`, `1.5 % of span`, `2 lbf`, for people.
[[nodiscard]] QString accuracyWords(const TesterAccuracy& accuracy);

/// What a tester is good for, in one plain sentence.
[[nodiscard]] QString suitabilitySentence(const TesterBudget& budget, const Quantities& quantities);

/// What the tester's accuracy means at the pressure that the springs read; empty where that is not
/// known, or the same as in the middle of its scale.
[[nodiscard]] QString pressureSentence(const Tester& tester, Force pressure,
                                       const Quantities& quantities);

/// What is to be noted or measured to know more, a sentence each.
[[nodiscard]] QStringList missingSentences(const TesterBudget& budget);

/// `Reading to a division: 0.3 lbf`, one for each part of the budget, then the sums.
[[nodiscard]] QStringList budgetLines(const TesterBudget& budget, const Quantities& quantities);

/// What a repeatability study says, a sentence each.
[[nodiscard]] QStringList studySentences(const StudyResult& result, const Quantities& quantities);

/// `Read 118.5 lbf; 117.2 lbf by the tester's calibration, give or take 0.4 lbf; …`; empty where
/// nothing was corrected and nothing is missing.
[[nodiscard]] QString correctionSentence(const CorrectedReading& reading,
                                         const Quantities& quantities);

/// What a calibration makes of readings, a sentence each; why there is no curve where there is
/// none.
[[nodiscard]] QStringList calibrationSentences(const Calibration& calibration,
                                               const CalibrationPicture& picture,
                                               const Quantities& quantities);

/// `calibrated 2026-01-10, due 2027-01-10`; an overdue one says so in capitals of its own word.
/// `day` is the day that it is judged for.
[[nodiscard]] QString calibrationWords(const Calibration& calibration, const QDate& day);

/// By what the readings of a tester on `day` are corrected, and how much; empty where they are not.
[[nodiscard]] QString testerCorrectionSentence(const HistoryTester& tester, const QDate& day,
                                               const Quantities& quantities);

/// That the trends go by forces at 20 °C, or that a temperature is missing for it.
[[nodiscard]] QString temperatureSentence(bool missing);

/// `2026-01-10 OVERDUE`, where there is little room.
[[nodiscard]] QString overdueDate(const QString& calibratedOn);

/// The warning about a calibration that was due before `day`, empty for one that was not.
[[nodiscard]] QString overdueSentence(const QString& tester, const Calibration& calibration,
                                      const QDate& day);

} // namespace coilbook::wording
