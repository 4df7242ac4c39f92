#include "ui/window/work_place.h"

#include "ui/pages/bench_page.h"
#include "ui/pages/review_page.h"
#include "ui/pages/sheet_page.h"

namespace coilbook {

QWidget* makePage(WorkPlace place, LogbookSession& session, Preferences& preferences,
                  QWidget* parent) {
    switch (place) {
    case WorkPlace::Bench:
        return new BenchPage(session, preferences, parent);
    case WorkPlace::Review:
        return new ReviewPage(session, preferences, parent);
    case WorkPlace::Sheet:
        return new SheetPage(session, preferences, parent);
    }
    return nullptr;
}

} // namespace coilbook
