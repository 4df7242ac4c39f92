#pragma once

#include "core/support/result.h"

#include <QByteArray>
#include <QByteArrayView>
#include <QFile>
#include <QString>

#include <memory>
#include <vector>

namespace coilbook {

/// A file being written under a passing name. Failures are remembered, so that callers write on and
/// ask once at the end.
class OutputFile {
public:
    /// `target` is the name that the finished file gets.
    explicit OutputFile(QString target);
    ~OutputFile();
    OutputFile(const OutputFile&) = delete;
    OutputFile& operator=(const OutputFile&) = delete;

    void write(QByteArrayView bytes);

    /// Everything is on the disk in the full length, or CannotWriteOutput.
    [[nodiscard]] Result<void> finish();

    /// Gives the finished file its name; a file of that name is replaced.
    [[nodiscard]] Result<void> rename();

private:
    void flush();
    void failWith(const QString& what);

    QString m_target;
    QFile m_file;
    QByteArray m_buffer;
    qint64 m_written = 0;
    bool m_renamed = false;
    QString m_failure;
};

/// Files that belong together in one folder: all of them are written before the first one gets its
/// name, so that a failure leaves what was there.
class OutputSet {
public:
    /// The folder is made if it is not there, and taken away again unless commit() succeeds.
    explicit OutputSet(const QString& folder);
    ~OutputSet();
    OutputSet(const OutputSet&) = delete;
    OutputSet& operator=(const OutputSet&) = delete;

    [[nodiscard]] OutputFile& add(const QString& name);

    [[nodiscard]] Result<void> commit();

private:
    QString m_folder;
    bool m_madeFolder = false;
    std::vector<std::unique_ptr<OutputFile>> m_files;
};

} // namespace coilbook
