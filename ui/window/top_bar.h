#pragma once

#include "ui/window/work_place.h"

#include <QWidget>

#include <array>

class QLabel;

namespace coilbook {

class EngineSelector;
class LogbookSession;
class PlaceButton;

/// The head of the window: which engine, after how many races, and the three places.
class TopBar : public QWidget {
    Q_OBJECT
public:
    explicit TopBar(LogbookSession& session, QWidget* parent = nullptr);

    [[nodiscard]] EngineSelector& selector() const { return *m_selector; }

    void setPlace(WorkPlace place);
    /// Places lead somewhere only while there is an engine.
    void setPlacesEnabled(bool enabled);

    /// `after 9 races, newest entry 2026-05-02`; empty without an engine.
    [[nodiscard]] QString standText() const;

Q_SIGNALS:
    void placeChosen(coilbook::WorkPlace place);

protected:
    void paintEvent(QPaintEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void showEngines();
    void showStand();
    void enlarge();

    LogbookSession& m_session;
    EngineSelector* m_selector;
    QLabel* m_races;
    QLabel* m_newest;
    std::array<PlaceButton*, 3> m_places{};
};

} // namespace coilbook
