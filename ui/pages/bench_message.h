#pragma once

#include <QLabel>

namespace coilbook {

/// What became of the last thing typed: one sentence with a word in front that says how it went. It
/// keeps its height, so that nothing moves when it speaks.
class BenchMessage : public QLabel {
    Q_OBJECT
public:
    enum class Kind { Hint, Saving, Saved, Waiting, NotSaved, Refused, Asks, Warns };

    explicit BenchMessage(QWidget* parent = nullptr);

    void say(Kind kind, const QString& sentence = {});

    [[nodiscard]] Kind kind() const { return m_kind; }

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void changeEvent(QEvent* event) override;

private:
    void compose();

    Kind m_kind = Kind::Hint;
    QString m_sentence;
};

} // namespace coilbook
