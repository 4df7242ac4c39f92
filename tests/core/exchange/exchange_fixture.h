#pragma once

#include "core/support/clock.h"

#include <QDir>
#include <QFile>
#include <QTemporaryDir>
#include <gtest/gtest.h>

#include <string>

namespace coilbook::testing {

/// A clock that stands still at noon of a day.
class StoppedClock final : public Clock {
public:
    explicit StoppedClock(const QDate& today)
        : m_today(today) {}

    [[nodiscard]] Moment now() const override {
        return {m_today.toString(Qt::ISODate) + QStringLiteral("T12:00:00.000Z"), 0};
    }

    [[nodiscard]] QDate today() const override { return m_today; }

private:
    QDate m_today;
};

inline std::string bytesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll().toStdString();
}

/// A folder for the files of one test.
class ExchangeFixture : public ::testing::Test {
protected:
    [[nodiscard]] QString pathOf(const QString& name) const { return m_folder.filePath(name); }

    QString write(const QString& name, const std::string& bytes) {
        QString path = pathOf(name);
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly)) << path.toStdString();
        EXPECT_EQ(file.write(bytes.data(), static_cast<qint64>(bytes.size())),
                  static_cast<qint64>(bytes.size()));
        return path;
    }

    StoppedClock m_clock{QDate(2026, 6, 15)};

private:
    QTemporaryDir m_folder;
};

} // namespace coilbook::testing
