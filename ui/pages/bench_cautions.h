#pragma once

#include <QWidget>

class QPushButton;

namespace coilbook {

/// What has to be done before the crank is turned by hand, said before the first spring of a round.
/// The usual cautions of the trade; the engine builder's procedure goes before them.
class BenchCautions : public QWidget {
    Q_OBJECT
public:
    explicit BenchCautions(QWidget* parent = nullptr);

    /// Enter says that it has been done.
    void takeFocus();

    /// All of it, for tests and screen readers.
    [[nodiscard]] QString text() const;

Q_SIGNALS:
    void heeded();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    QPushButton* m_done;
};

} // namespace coilbook
