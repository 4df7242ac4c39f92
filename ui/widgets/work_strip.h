#pragma once

#include <QFrame>

class QLabel;
class QProgressBar;

namespace coilbook {

/// Long work that goes on beside everything else: what it is, how far it is, and a way to stop it.
class WorkStrip : public QFrame {
    Q_OBJECT
public:
    explicit WorkStrip(QWidget* parent = nullptr);

    void start(const QString& what);
    /// 0 to 1.
    void setPart(double part);
    void finish();

Q_SIGNALS:
    void cancelled();

private:
    QLabel* m_what;
    QProgressBar* m_bar;
};

} // namespace coilbook
