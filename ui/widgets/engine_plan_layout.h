#pragma once

#include "core/domain/engine_layout.h"

#include <QRectF>
#include <QSizeF>
#include <QString>

#include <optional>
#include <vector>

namespace coilbook {

/// Which way an arrow key leads over the plan.
enum class PlanDirection { Front, Rear, Left, Right };

/// Distances of a plan, in the units of its size.
struct EnginePlanSpacing {
    double headingHeight = 20.0; ///< room for the banks' names and the arrow to the front
    double footerHeight = 0.0;   ///< room under each bank, e.g. for a scale that its cells share
    double frontWidth = 60.0;    ///< of the arrow to the front with its word
    double valley = 24.0;        ///< between two banks
    double betweenCylinders = 8.0;
    double withinCylinder = 2.0; ///< between the two springs of one cylinder
    QSizeF largestCell;          ///< cells grow no further than this; empty: they fill the size
};

/// An engine seen from above, front at the top: where each spring, bank and cylinder goes. Computed
/// from the engine's layout data alone, so any number of banks and any numbering draws itself.
struct EnginePlanLayout {
    struct Spot {
        Place place;
        QRectF area;
    };

    struct Heading {
        QString text;
        QRectF area;
    };

    /// Springs of one cylinder that sit side by side.
    struct CylinderFrame {
        Cylinder cylinder;
        QRectF area;
    };

    std::vector<Spot> spots; ///< bank by bank from left to right, each from front to rear
    std::vector<Heading> banks;
    std::vector<QRectF> footers; ///< one under each bank
    std::vector<CylinderFrame> cylinders;
    QRectF front; ///< of the arrow that points to the engine's front, and its word

    /// Null rectangle: no such place.
    [[nodiscard]] QRectF areaOf(const Place& place) const;
    [[nodiscard]] std::optional<Place> placeAt(const QPointF& point) const;

    /// The next spring in that direction as the eye sees it: towards front and rear along the bank,
    /// to the left and right the one of the next bank that lies nearest. Empty at the edge.
    [[nodiscard]] std::optional<Place> neighbour(const Place& from, PlanDirection direction) const;
};

/// The plan of an engine in an area of `size`, its top left corner at the origin. Areas are empty
/// where the size leaves no room.
[[nodiscard]] EnginePlanLayout layOutEnginePlan(const EngineLayout& engine, const QSizeF& size,
                                                const EnginePlanSpacing& spacing);

} // namespace coilbook
