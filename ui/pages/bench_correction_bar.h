#pragma once

#include <QWidget>

class QComboBox;
class QLabel;
class QPushButton;

namespace coilbook {

/// Asks in place why a hit is amended. Stands where the buttons of the round stand otherwise.
class BenchCorrectionBar : public QWidget {
    Q_OBJECT
public:
    explicit BenchCorrectionBar(QWidget* parent = nullptr);

    /// `hit` in words, e.g. "hit 1 of 3 E, 161.50".
    void ask(const QString& hit);
    void focusReason();

    [[nodiscard]] QString reason() const;

    [[nodiscard]] QComboBox* reasonBox() const { return m_reason; }

Q_SIGNALS:
    void correctionGiven(); ///< Enter in the reason, or the button
    void withdrawalGiven();
    void cancelled();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QLabel* m_title;
    QComboBox* m_reason;
    QPushButton* m_keep;
    QPushButton* m_withdraw;
};

} // namespace coilbook
