#pragma once

#include "ui/printing/paper_canvas.h"

#include <QString>
#include <QStringList>

#include <vector>

namespace coilbook {

// The parts that both printed sheets share. Each draws from the top of its area and tells its
// height; those at the foot tell it beforehand.

/// One fact of the head: a caption over its value. An empty value leaves a line for the pen.
struct HeadFact {
    QString caption;
    QString value;
};

/// Title at the left, engine at the right, a heavy line below.
[[nodiscard]] double drawTitle(PaperCanvas& canvas, const QRectF& area, const QString& title,
                               const QString& engine);

/// Facts in rows of four.
[[nodiscard]] double drawFacts(PaperCanvas& canvas, const QRectF& area,
                               const std::vector<HeadFact>& facts);

[[nodiscard]] double cautionsHeight(const QStringList& cautions, double width);
void drawCautions(PaperCanvas& canvas, const QRectF& area, const QStringList& cautions);

[[nodiscard]] double signaturesHeight();
void drawSignatures(PaperCanvas& canvas, const QRectF& area, const QStringList& whose);

[[nodiscard]] double footerHeight();
/// The one page, when it was printed, and the seal if there is one.
void drawFooter(PaperCanvas& canvas, const QRectF& area, const QString& printedAt,
                const QString& seal = {});

} // namespace coilbook
