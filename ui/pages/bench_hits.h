#pragma once

#include "core/services/round.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QToolButton;

namespace coilbook {

/// The hits taken at one stop, side by side; one is chosen to be corrected. Never takes the focus.
class BenchHits : public QWidget {
    Q_OBJECT
public:
    explicit BenchHits(QWidget* parent = nullptr);

    void list(const std::vector<RoundHit>& hits, std::optional<std::size_t> chosen);

    [[nodiscard]] QString text() const;

Q_SIGNALS:
    void hitChosen(std::size_t index);

private:
    void addButton(std::size_t index);

    QLabel* m_none;
    std::vector<QToolButton*> m_buttons;
};

} // namespace coilbook
