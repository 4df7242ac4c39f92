#pragma once

#include <QKeyEvent>
#include <QLineEdit>

#include <memory>
#include <vector>

namespace coilbook {

/// The field for one reading, large and worked from the numeric keypad alone. It knows nothing of
/// readings: it tells which key was meant how.
class ReadingField : public QLineEdit {
    Q_OBJECT
public:
    explicit ReadingField(QWidget* parent = nullptr);

    /// Keeps further keys back while something is being put on the disk, so that a fast hand loses
    /// none of them.
    void hold();
    /// Takes the keys kept back as if they were typed now; one of them may hold again.
    void release();
    /// Ends holding and forgets the keys kept back: they were meant for another spring.
    void releaseAndForget();

    [[nodiscard]] bool isHeld() const { return m_held; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    void committed();        ///< Enter
    void furtherCommitted(); ///< +
    void skipped();          ///< −
    void retestToggled();    ///< *
    void correctionAsked();  ///< /
    void steppedBack();      ///< Page Up, Up
    void steppedOn();        ///< Page Down, Down
    void cancelled();        ///< Escape

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    /// Whether the key was one of those that mean something here.
    bool tellMeaning(int key);
    void adoptFont();

    std::vector<std::unique_ptr<QKeyEvent>> m_keys;
    bool m_held = false;
    bool m_adopting = false;
};

} // namespace coilbook
