#include "core/wording/say_words.h"

#include "core/wording/words.h"

namespace coilbook::wording {

namespace {

QString nameOf(const NamedSpring& spring) {
    return placeText(spring.place) + QLatin1Char(' ') + spring.label;
}

QString saidBy(ReadingJudgement judgement, const QString& who) {
    switch (judgement) {
    case ReadingJudgement::SetAside:
        return who.isEmpty() ? Words::tr("set aside by the user")
                             : Words::tr("set aside by %1").arg(who);
    case ReadingJudgement::DropDenied:
        return who.isEmpty() ? Words::tr("a misread, tested again")
                             : Words::tr("a misread, tested again, %1", "who says so").arg(who);
    case ReadingJudgement::LeftToModel:
    case ReadingJudgement::Kept:
    case ReadingJudgement::DropConfirmed:
        return Words::tr("a misread by its trend");
    }
    Q_UNREACHABLE();
}

} // namespace

QString readingNotCounted(const NamedSpring& spring, const QString& reading, const QString& day,
                          ReadingJudgement judgement, const QString& who) {
    return Words::tr("%1, %2 of %3 (%4)", "a spring, its reading, a day, who says so")
        .arg(nameOf(spring), reading, day, saidBy(judgement, who));
}

QString hitsNotCounted(const NamedSpring& spring, int hits) {
    const QString name = nameOf(spring);
    return hits == 1 ? Words::tr("%1, 1 hit (too far from the others)").arg(name)
                     : Words::tr("%1, %2 hits (too far from the others)")
                           .arg(name, QString::number(hits));
}

QString levelChanged(const NamedSpring& spring, LevelChangeKind kind, const QString& day) {
    return Words::tr("%1 on %2 (%3)", "a spring, a day, what was worked on")
        .arg(nameOf(spring), day, levelChangeKind(kind));
}

QString levelChangeKind(LevelChangeKind kind) {
    switch (kind) {
    case LevelChangeKind::Shim:
        return Words::tr("shims");
    case LevelChangeKind::ValveSeatWork:
        return Words::tr("valve seat");
    case LevelChangeKind::Retainer:
        return Words::tr("retainer");
    case LevelChangeKind::Move:
        return Words::tr("moved to another place");
    case LevelChangeKind::Other:
        return Words::tr("other work");
    }
    Q_UNREACHABLE();
}

} // namespace coilbook::wording
