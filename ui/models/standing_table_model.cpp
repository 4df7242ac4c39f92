#include "ui/models/standing_table_model.h"

#include "core/services/urgency.h"
#include "core/wording/wording.h"
#include "ui/drawing/standing_mark.h"

#include <limits>

namespace coilbook {

namespace {

constexpr double kLast = std::numeric_limits<double>::infinity(); ///< sorts what is not known
constexpr int kHorizon = 60;                                      ///< races, see RacesLeft

QString dash() {
    return QStringLiteral("–");
}

QString races(const std::optional<int>& count) {
    return count ? QString::number(*count)
                 : StandingTableModel::tr("over %1", "a number of races").arg(kHorizon);
}

std::optional<Force> meanOf(const std::optional<ForceEstimate>& estimate) {
    return estimate ? std::optional(estimate->mean) : std::nullopt;
}

double number(const std::optional<Force>& force) {
    return force ? force->inPoundsForce() : kLast;
}

} // namespace

StandingTableModel::StandingTableModel(QObject* parent)
    : QAbstractTableModel(parent) {}

void StandingTableModel::setAssessment(std::shared_ptr<const Assessment> assessment,
                                       const Quantities& quantities) {
    beginResetModel();
    m_assessment = std::move(assessment);
    m_order = m_assessment ? byUrgency(*m_assessment) : std::vector<std::size_t>();
    m_quantities = quantities;
    endResetModel();
}

const SpringAssessment& StandingTableModel::springAt(int row) const {
    return m_assessment->springs[m_order[static_cast<std::size_t>(row)]];
}

int StandingTableModel::rowOf(const Place& place) const {
    for (int row = 0; row < rowCount(); ++row) {
        if (springAt(row).place == place) {
            return row;
        }
    }
    return -1;
}

int StandingTableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_order.size());
}

int StandingTableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant StandingTableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) {
        return {};
    }
    const SpringAssessment& spring = springAt(index.row());
    switch (role) {
    case Qt::DisplayRole:
        return text(spring, index.column());
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(index.column() >= MeasuredColumn
                                       ? Qt::AlignRight | Qt::AlignVCenter
                                       : Qt::AlignLeft | Qt::AlignVCenter);
    case SortRole:
        return sortKey(spring, index.row(), index.column());
    case MarkRole:
        return QVariant::fromValue(standingMarkOf(spring, m_assessment->rules));
    default:
        return {};
    }
}

QVariant StandingTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) {
        return QAbstractTableModel::headerData(section, orientation, role);
    }
    if (role == Qt::TextAlignmentRole) {
        return QVariant::fromValue(section >= MeasuredColumn ? Qt::AlignRight | Qt::AlignBottom
                                                             : Qt::AlignLeft | Qt::AlignBottom);
    }
    if (role != Qt::DisplayRole) {
        return {};
    }
    switch (section) {
    case PlaceColumn:
        return tr("Place");
    case SpringColumn:
        return tr("Spring");
    case StandingColumn:
        return tr("Standing");
    case MeasuredColumn:
        return tr("Lost,\n%1", "measured loss, its unit").arg(m_quantities.unitName());
    case EstimatedColumn:
        return tr("Estimated\n(likely between)");
    case PerRaceColumn:
        return tr("Per\nrace");
    case RacesLeftColumn:
        return tr("Races\nleft");
    case InspectionsColumn:
        return tr("Inspec-\ntions");
    default:
        return {};
    }
}

QString StandingTableModel::text(const SpringAssessment& spring, int column) const {
    switch (column) {
    case PlaceColumn:
        return placeText(spring.place);
    case SpringColumn:
        return spring.label;
    case StandingColumn:
        return wording::standing(spring, m_assessment->rules.racesAhead);
    case MeasuredColumn:
        return spring.measuredLoss ? m_quantities.force(*spring.measuredLoss) : dash();
    case EstimatedColumn:
        return estimatedText(spring, m_quantities);
    case PerRaceColumn: {
        const std::optional<Force> rate = meanOf(spring.lossPerRace);
        return rate ? m_quantities.rate(*rate) : dash();
    }
    case RacesLeftColumn:
        return racesLeftText(spring);
    case InspectionsColumn:
        return QString::number(spring.inspections);
    default:
        return {};
    }
}

QVariant StandingTableModel::sortKey(const SpringAssessment& spring, int row, int column) const {
    switch (column) {
    case PlaceColumn:
        return 2 * spring.place.cylinder.number() + (spring.place.valve == Valve::Exhaust ? 1 : 0);
    case SpringColumn:
        return spring.label;
    case MeasuredColumn:
        return number(spring.measuredLoss);
    case EstimatedColumn:
        return number(meanOf(spring.loss));
    case PerRaceColumn:
        return number(meanOf(spring.lossPerRace));
    case RacesLeftColumn:
        return spring.racesLeft ? spring.racesLeft->median.value_or(kHorizon + 1) : kLast;
    case InspectionsColumn:
        return spring.inspections;
    default:
        return row; // rows stand in order of urgency
    }
}

QString estimatedText(const SpringAssessment& spring, const Quantities& quantities) {
    return spring.loss ? wording::lossWithRange(*spring.loss, quantities) : dash();
}

QString racesLeftText(const SpringAssessment& spring) {
    if (!spring.racesLeft) {
        return dash();
    }
    const RacesLeft& left = *spring.racesLeft;
    if (!left.p10 || left.p10 == left.p90) {
        return races(left.median);
    }
    return StandingTableModel::tr("%1 (%2 to %3)", "races left and their bounds")
        .arg(races(left.median), races(left.p10), races(left.p90));
}

} // namespace coilbook
