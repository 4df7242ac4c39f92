#pragma once

#include "ui/look/icons.h"

#include <QWidget>

#include <functional>

class QLabel;
class QVBoxLayout;

namespace coilbook {

/// What the window shows while there is nothing to work on: it says why and what to do next.
class StartPage : public QWidget {
    Q_OBJECT
public:
    explicit StartPage(QWidget* parent = nullptr);

    /// No logbook is open; with `fault`, because that one could not be.
    void showNoLogbook(const QString& fault = {});
    /// That file is being opened.
    void showOpening(const QString& fileName);
    /// The logbook has no engine yet.
    void showNoEngine(bool readOnly);

    /// What stands in large letters.
    [[nodiscard]] QString headline() const;

Q_SIGNALS:
    void newLogbookWanted();
    void demoWanted();
    void openWanted();
    void engineWanted();
    void importWanted();

protected:
    void changeEvent(QEvent* event) override;

private:
    void enlargeHeadline();
    void say(const QString& headline, const QString& sentence);
    void clearChoices();
    void addChoice(const QString& name, Picture picture, const QString& title,
                   const QString& sentence, void (StartPage::*wanted)());

    QLabel* m_headline;
    QLabel* m_sentence;
    QVBoxLayout* m_choices;
};

} // namespace coilbook
