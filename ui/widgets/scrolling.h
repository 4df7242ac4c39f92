#pragma once

class QScrollArea;
class QWidget;

namespace coilbook {

/// A frameless area that scrolls `page` where the screen is too small for it and lets the ground
/// below shine through. Takes the page over.
[[nodiscard]] QScrollArea* scrolling(QWidget* page);

} // namespace coilbook
