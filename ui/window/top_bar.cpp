#include "ui/window/top_bar.h"

#include "core/services/logbook_session.h"
#include "core/wording/quantities.h"
#include "ui/drawing/scheme.h"
#include "ui/widgets/engine_selector.h"
#include "ui/widgets/place_button.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>

namespace coilbook {

namespace {

constexpr double kEngineScale = 1.25;

} // namespace

TopBar::TopBar(LogbookSession& session, QWidget* parent)
    : QWidget(parent)
    , m_session(session)
    , m_selector(new EngineSelector(this))
    , m_races(new QLabel(this))
    , m_newest(new QLabel(this)) {
    auto* engineLabel = new QLabel(tr("Engine"), this);
    engineLabel->setBuddy(m_selector);
    m_selector->setToolTip(tr("Ctrl+E, then type any part of the name"));
    m_races->setTextFormat(Qt::PlainText);
    m_newest->setTextFormat(Qt::PlainText);
    m_newest->setForegroundRole(QPalette::PlaceholderText);
    m_newest->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);

    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(fontMetrics().averageCharWidth(), 0, 0, 0);
    row->setSpacing(fontMetrics().averageCharWidth());
    row->addWidget(engineLabel);
    row->addWidget(m_selector);
    row->addWidget(m_races);
    row->addWidget(m_newest, 1);
    auto* places = new QHBoxLayout;
    places->setSpacing(0);
    const auto addPlace = [&](WorkPlace place, Picture picture, const QString& word,
                              const QString& key) {
        auto* button = new PlaceButton(picture, word, key, this);
        connect(button, &QAbstractButton::clicked, this,
                [this, place] { Q_EMIT placeChosen(place); });
        places->addWidget(button);
        m_places.at(static_cast<std::size_t>(place)) = button;
    };
    addPlace(WorkPlace::Bench, Picture::Bench, tr("Bench"), QStringLiteral("F2"));
    addPlace(WorkPlace::Review, Picture::Review, tr("Review"), QStringLiteral("F3"));
    addPlace(WorkPlace::Sheet, Picture::Sheet, tr("Sheet"), QStringLiteral("F4"));
    row->addLayout(places);
    enlarge();

    connect(&session, &LogbookSession::enginesChanged, this, &TopBar::showEngines);
    connect(&session, &LogbookSession::opened, this, &TopBar::showEngines);
    connect(&session, &LogbookSession::closed, this, &TopBar::showEngines);
    connect(&session, &LogbookSession::logChanged, this, &TopBar::showStand);
    showEngines();
}

void TopBar::enlarge() {
    QFont large = font();
    large.setPointSizeF(large.pointSizeF() * kEngineScale);
    m_races->setFont(large);
    large.setWeight(QFont::DemiBold);
    m_selector->setFont(large);
}

void TopBar::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) {
        enlarge();
    }
}

void TopBar::setPlace(WorkPlace place) {
    m_places.at(static_cast<std::size_t>(place))->setChecked(true);
}

void TopBar::setPlacesEnabled(bool enabled) {
    for (PlaceButton* button : m_places) {
        button->setEnabled(enabled);
    }
    m_selector->setEnabled(enabled);
}

QString TopBar::standText() const {
    return m_newest->text().isEmpty()
               ? m_races->text()
               : QStringLiteral("%1, %2").arg(m_races->text(), m_newest->text());
}

void TopBar::showEngines() {
    m_selector->setEngines(m_session.engines());
    showStand();
}

void TopBar::showStand() {
    m_selector->setCurrentEngine(m_session.selectedEngine());
    const auto log = m_session.log();
    const auto history = m_session.history();
    if (!log || !history) {
        m_races->clear();
        m_newest->clear();
        return;
    }
    const int races = history->racesNow;
    m_races->setText(races == 1 ? tr("after 1 race") : tr("after %n races", nullptr, races));
    const QString day = Quantities().date(history->asOf);
    m_newest->setText(day.isEmpty() ? tr("nothing entered yet") : tr("newest entry %1").arg(day));
    m_newest->setToolTip(m_newest->text());
}

void TopBar::paintEvent(QPaintEvent*) {
    const Scheme scheme = schemeFor(palette());
    QPainter painter(this);
    painter.fillRect(rect(), scheme.panel);
    painter.fillRect(QRect(0, height() - 1, width(), 1), scheme.grid);
}

} // namespace coilbook
