#pragma once

#include <QFrame>
#include <QString>

#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace coilbook {

/// One sentence across the window with the ways out as buttons beside it. It never takes the focus
/// and never interrupts; the newest message replaces the one before. Text is shown as plain text,
/// whatever it contains.
class MessageStrip : public QFrame {
    Q_OBJECT
public:
    enum class Kind { Notice, Fault };

    struct WayOut {
        QString text;
        std::function<void()> take; ///< the strip closes before this is called
    };

    explicit MessageStrip(QWidget* parent = nullptr);

    /// Shows the sentence until somebody takes a way out, closes it, or dismiss() is called.
    void tell(Kind kind, const QString& sentence, std::vector<WayOut> waysOut = {});
    void dismiss();

    /// What is shown; empty when nothing is.
    [[nodiscard]] QString sentence() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    Kind m_kind = Kind::Notice;
    QLabel* m_picture;
    QLabel* m_text;
    QHBoxLayout* m_buttons;
    std::vector<QPushButton*> m_waysOut;
};

} // namespace coilbook
