#pragma once

#include <QProcess>
#include <QStandardPaths>
#include <QString>
#include <QStringList>
#include <gtest/gtest.h>

namespace coilbook::testing {

/// What a poppler tool prints about a PDF; an independent reader of what we wrote. Fails the test
/// with the name of the package where the tool is missing.
[[nodiscard]] inline QString popplerSays(const QString& tool, const QStringList& arguments) {
    const QString program = QStandardPaths::findExecutable(tool);
    if (program.isEmpty()) {
        ADD_FAILURE() << tool.toStdString()
                      << " is missing: install the Debian package poppler-utils";
        return {};
    }
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished());
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    return QString::fromUtf8(process.readAllStandardOutput());
}

[[nodiscard]] inline QString pdfInfo(const QString& path) {
    return popplerSays(QStringLiteral("pdfinfo"), {path});
}

/// All text of the document in the order in which it was drawn, runs of white space made one blank
/// and ligatures taken apart.
[[nodiscard]] inline QString pdfText(const QString& path) {
    return popplerSays(QStringLiteral("pdftotext"),
                       {QStringLiteral("-raw"), path, QStringLiteral("-")})
        .simplified()
        .normalized(QString::NormalizationForm_KC);
}

} // namespace coilbook::testing
