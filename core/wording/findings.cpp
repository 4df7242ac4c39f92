#include "core/wording/findings.h"

#include "core/wording/fault_sentences.h"
#include "core/wording/words.h"

namespace coilbook::wording {

namespace {

QString argumentOf(const Finding& finding, qsizetype index) {
    constexpr qsizetype kLongest = 200;
    return shown(finding.arguments.value(index), kLongest);
}

QString ruleSentence(const Finding& finding) {
    Error error;
    error.arguments = finding.arguments;
    return finding.rule ? sentenceOf(*finding.rule, error) : QString();
}

QString beginningSentence(const VerifyReport::Beginning& beginning) {
    switch (beginning.kind) {
    case SealBeginning::Created:
        return Words::tr("Sealed from its first entry on.");
    case SealBeginning::Migrated:
        return Words::tr("Sealed anew with seal %1, when it was brought up to date for a newer "
                         "Coilbook: it holds what the logbook had by then.")
            .arg(beginning.seal);
    case SealBeginning::Imported:
        return Words::tr("Sealed anew with seal %1, when it was made from an exported logbook: "
                         "earlier seals of that one are not in it.")
            .arg(beginning.seal);
    case SealBeginning::Restored:
        return Words::tr("Sealed anew with seal %1, when it was restored from a backup: seals that "
                         "came after that backup are not in it.")
            .arg(beginning.seal);
    }
    return {};
}

} // namespace

QString finding(const Finding& finding) {
    const QString first = argumentOf(finding, 0);
    const QString second = argumentOf(finding, 1);
    const QString third = argumentOf(finding, 2);
    switch (finding.kind) {
    case FindingKind::Page:
        return Words::tr("The file is damaged here (%1).").arg(first);
    case FindingKind::NoSuchRow:
        return Words::tr("It refers to a row that is not there (%1).").arg(first);
    case FindingKind::Checksum:
        return Words::tr("The row does not match its checksum: it was damaged, or changed by "
                         "another program.");
    case FindingKind::NotSealed:
        return Words::tr("The row has no seal: it was added by another program.");
    case FindingKind::NotAsSealed:
        return Words::tr("The row is not what seal %1 is over: it was changed behind the logbook's "
                         "back.")
            .arg(first);
    case FindingKind::SealedRowGone:
        return Words::tr("The row that seal %1 is over is not there: it was removed behind the "
                         "logbook's back.")
            .arg(first);
    case FindingKind::BlockNotAsSealed:
        return Words::tr("The rows that were imported under seal %1 were changed, added or removed "
                         "behind the logbook's back: %2 were sealed, %3 are there.")
            .arg(first, second, third);
    case FindingKind::AllNotAsSealed:
        return Words::tr("What the logbook held when seal %1 was set was changed behind its back: "
                         "%2 rows were sealed, %3 are there.")
            .arg(first, second, third);
    case FindingKind::BrokenChain:
        return Words::tr("Seal %1 does not follow from the seal before it: the chain of seals was "
                         "damaged, or changed by another program.")
            .arg(first);
    case FindingKind::NoOriginal:
        return Words::tr("It amends readings that lead to no original.");
    case FindingKind::AmendmentGap:
        return Words::tr("It does not begin where the amendment before it ended.");
    case FindingKind::UnknownFact:
        return Words::tr("It names a fact that records of its kind do not have.");
    case FindingKind::NotLeadingToNow:
        return Words::tr("It does not lead to what the record says now.");
    case FindingKind::NothingAmended:
        return Words::tr("It amends a record that is not there.");
    case FindingKind::BreaksRule:
        return ruleSentence(finding);
    case FindingKind::LivesOverlap:
        return Words::tr("The time of spring “%1” at %2 ends before it begins: fitted %3 at %4, "
                         "out %5 at %6.")
            .arg(first, second, third, races(finding.arguments.value(3).toInt()),
                 argumentOf(finding, 4), races(finding.arguments.value(5).toInt()));
    }
    return {};
}

QString findingLine(const Finding& found) {
    return Words::tr("%1: %2").arg(shown(found.where), finding(found));
}

QStringList checked(const VerifyReport& report) {
    QStringList sentences;
    if (report.isSound()) {
        sentences << (report.rowsChecked == 1
                          ? Words::tr("1 row checked, nothing wrong.")
                          : Words::tr("%1 rows checked, nothing wrong.").arg(report.rowsChecked));
    }
    for (const VerifyReport::Beginning& beginning : report.beginnings) {
        sentences << beginningSentence(beginning);
    }
    if (report.newestSeal.number > 0) {
        sentences << Words::tr("Newest seal: %1:%2")
                         .arg(QString::number(report.newestSeal.number),
                              shown(report.newestSeal.digest, NotedSeal::kMostDigits));
    }
    return sentences;
}

QString sealAnswer(SealAnswer answer, const NotedSeal& noted, const VerifyReport& report) {
    const QString seal = noted.shortText();
    if (answer == SealAnswer::NotThere) {
        return Words::tr("No: this logbook has no seal %1, its newest is %2.")
            .arg(noted.number)
            .arg(report.newestSeal.number);
    }
    if (answer == SealAnswer::Differs) {
        return Words::tr("No: seal %1 of this logbook is another one. It did not pass through what "
                         "%2 was noted of.")
            .arg(QString::number(noted.number), seal);
    }
    if (!report.isSound()) {
        return Words::tr("Seal %1 is in this logbook, but what is found above shows that it was "
                         "changed or damaged since.")
            .arg(seal);
    }
    return Words::tr("Yes: this logbook passed through the state of seal %1, and nothing of it was "
                     "altered, slipped in or removed since without a trace.")
        .arg(seal);
}

QString whatSealsProve() {
    return Words::tr(
        "Every entry gets a seal: a number and a check figure over the entry and over the seal "
        "before. Whoever holds the file could rewrite it together with all its seals, so the seals "
        "in the file alone prove nothing. A number and its digits noted elsewhere, as on a printed "
        "sheet, do: they show whether the logbook passed through exactly that state, with nothing "
        "before it altered, slipped in or removed later. No seal tells whether a reading was "
        "true.");
}

} // namespace coilbook::wording
