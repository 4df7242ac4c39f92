// Sits inside the real window program, as a plugin that Qt loads when QT_QPA_GENERIC_PLUGINS names
// it, and types readings at the bench until the program is killed. What the window shows goes to
// standard output, a line each:
//     resumed PLACE|TEXT   the first field that is ready, and what stands in it
//     saved TEXT           the window says that this reading is saved
//     waiting TEXT         the window says that this reading waits on this computer
//     typed PLACE|TEXT     half a reading was left in the field, long enough to be kept
// The specification is `LIFE:PLAN`: LIFE goes into the readings, so that each is typed once only.
// PLAN `walk` goes to another spring after three hits, `stay` does not, `half` leaves half a
// reading after four.
#include "tests/durability/typist_plugin.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QRegularExpression>
#include <QStringList>
#include <QTimer>
#include <QWidget>

#include <cstdio>
#include <utility>

namespace {

void say(const char* what, const QString& text) {
    std::printf("%s %s\n", what, qPrintable(text));
    std::fflush(stdout);
}

bool isA(const QWidget* widget, const char* name) {
    return widget != nullptr && qstrcmp(widget->metaObject()->className(), name) == 0;
}

/// The texts of all visible widgets of a class, as somebody hears them who cannot see.
QStringList textsOf(const char* name) {
    QStringList texts;
    const QWidgetList widgets = QApplication::allWidgets();
    for (const QWidget* widget : widgets) {
        if (isA(widget, name) && widget->isVisible()) {
            texts << widget->accessibleName();
        }
    }
    return texts;
}

class Typist : public QObject {
public:
    explicit Typist(const QString& specification) {
        const QStringList words = specification.split(QLatin1Char(':'));
        m_life = words.value(0).toInt();
        m_plan = words.value(1);
        m_timer.setInterval(2);
        connect(&m_timer, &QTimer::timeout, this, &Typist::act);
        m_timer.start();
    }

private:
    static QLineEdit* field() {
        QWidget* focus = QApplication::focusWidget();
        return isA(focus, "coilbook::ReadingField") ? qobject_cast<QLineEdit*>(focus) : nullptr;
    }

    /// Which of the large labels names the place: `3 E`.
    static QString place() {
        static const QRegularExpression form(QStringLiteral("^[0-9]+ [IE]$"));
        return textsOf("coilbook::LargeLabel").filter(form).value(0);
    }

    static void press(QWidget* target, int key, const QString& text) {
        QKeyEvent down(QEvent::KeyPress, key, Qt::NoModifier, text);
        QApplication::sendEvent(target, &down);
    }

    /// They stand before the first spring of a round.
    static void heedCautions() {
        QWidget* focus = QApplication::focusWidget();
        for (const QWidget* above = focus; above != nullptr; above = above->parentWidget()) {
            if (isA(above, "coilbook::BenchCautions")) {
                press(focus, Qt::Key_Return, {});
                return;
            }
        }
    }

    void act() {
        heedCautions();
        QLineEdit* into = field();
        if (into == nullptr || m_isDone) {
            return;
        }
        if (!m_hasBegun) {
            m_hasBegun = true;
            say("resumed", place() + QLatin1Char('|') + into->text());
            into->clear();
        }
        if (m_awaited.isEmpty()) {
            type(into);
        } else {
            look();
        }
    }

    void type(QLineEdit* into) {
        const QString whole = QStringLiteral("130.%1%2")
                                  .arg(m_life, 3, 10, QLatin1Char('0'))
                                  .arg(m_count + 1, 3, 10, QLatin1Char('0'));
        if (m_plan == QLatin1String("half") && m_count == 4 && m_typed == 6) {
            m_isDone = true;
            const QString left = place() + QLatin1Char('|') + into->text();
            QTimer::singleShot(600, this, [left] { say("typed", left); });
            return;
        }
        if (m_typed < whole.size()) {
            const QChar next = whole.at(m_typed++);
            press(into, next.unicode(), next);
            return;
        }
        m_awaited = whole;
        m_typed = 0;
        const bool walks = m_plan == QLatin1String("walk") && m_count == 2;
        ++m_count;
        press(into, walks ? Qt::Key_Return : Qt::Key_Plus, walks ? QString() : QStringLiteral("+"));
    }

    void look() {
        const QStringList texts = textsOf("coilbook::BenchMessage");
        for (const QString& text : texts) {
            if (!text.contains(m_awaited)) {
                continue;
            }
            if (text.startsWith(QLatin1String("Saved."))) {
                say("saved", std::exchange(m_awaited, QString()));
                return;
            }
            if (text.startsWith(QLatin1String("Waiting."))) {
                say("waiting", std::exchange(m_awaited, QString()));
                return;
            }
        }
    }

    QTimer m_timer;
    int m_life = 0;
    QString m_plan;
    bool m_hasBegun = false;
    bool m_isDone = false;
    int m_count = 0;       ///< readings entered in this life
    qsizetype m_typed = 0; ///< characters of the next one
    QString m_awaited;     ///< entered, and nothing said about it yet
};

} // namespace

QObject* TypistPlugin::create(const QString& /*key*/, const QString& specification) {
    return new Typist(specification);
}
