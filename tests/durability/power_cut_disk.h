#pragma once

#include <QString>
#include <QStringList>

#include <map>
#include <memory>
#include <string>
#include <vector>

namespace coilbook::testing {

/// A disk that can lose its power or refuse a write at any chosen moment. It is an SQLite VFS, made
/// the default one of the process, for all files in one folder; other files stay with the system.
///
/// What it takes for granted is what POSIX promises and no more: the bytes of a file are sure to
/// survive once the file was synced, a name (made, renamed or removed) once its folder was. All
/// else survives a cut or not, sector by sector of 512 bytes, name by name.
///
/// The bytes lie in memory. Each name also stands as an empty file in the real folder, so that code
/// which looks for names there finds them; rename(), unlink() and fsync() of the process are told
/// to the disk (posix_calls.cpp). One disk at a time.
class PowerCutDisk {
public:
    enum class Survivors {
        SyncedOnly, ///< nothing that was not synced
        Everything,
        ByChance, ///< each unsynced sector, length and name by the toss of a coin
    };

    enum class Failing { Once, UntilFreed };

    struct File;
    using Names = std::map<std::string, std::shared_ptr<File>>; ///< by absolute path

    explicit PowerCutDisk(const QString& folder);
    ~PowerCutDisk();
    PowerCutDisk(const PowerCutDisk&) = delete;
    PowerCutDisk& operator=(const PowerCutDisk&) = delete;
    PowerCutDisk(PowerCutDisk&&) = delete;
    PowerCutDisk& operator=(PowerCutDisk&&) = delete;

    /// The files as they are now, all of it synced; and back to such a state, with the power on,
    /// no fault to come, and operations() at 0.
    [[nodiscard]] std::map<QString, std::string> contents() const;
    void setContents(const std::map<QString, std::string>& files);

    [[nodiscard]] QStringList names() const;

    /// Writes, truncations, syncs and changes of names so far.
    [[nodiscard]] qint64 operations() const { return m_operations; }

    /// The power goes off instead of operation number `operation` (the first is 1).
    void cutAt(qint64 operation) { m_cutAt = operation; }

    /// Goes off now, if it is still on.
    void cut() { m_isOff = true; }

    /// The first write at or after operation number `operation` fails with an SQLite code, or all
    /// from there on until free().
    void failAt(qint64 operation, int code, Failing failing);

    void free() { m_failAt = 0; }

    /// Whether a fault was due and has happened.
    [[nodiscard]] bool hasFailed() const { return m_hasFailed; }

    /// The power comes back: what is on the disk is what survived.
    void powerOn(Survivors survivors, unsigned seed);

    // The other side: what the file system calls

    [[nodiscard]] static PowerCutDisk* holding(const char* path);

    [[nodiscard]] bool isOff() const { return m_isOff; }

    [[nodiscard]] std::shared_ptr<File> find(const std::string& path) const;
    /// Null when the power is off.
    [[nodiscard]] std::shared_ptr<File> create(const std::string& path);
    /// These return SQLite codes.
    int write(File& file, const void* bytes, std::size_t count, std::size_t offset);
    int truncate(File& file, std::size_t length);
    int sync(File& file);
    int syncNames();
    int remove(const std::string& path, bool andSync);
    int rename(const std::string& from, const std::string& to);

private:
    /// Counts an operation; false when the power is off.
    [[nodiscard]] bool proceeds();
    [[nodiscard]] int faultOfWrite();
    void mirrorNames() const;

    QString m_folder;
    std::string m_prefix;
    Names m_live;
    Names m_durable;
    qint64 m_operations = 0;
    qint64 m_cutAt = 0;  ///< 0: never
    qint64 m_failAt = 0; ///< 0: never
    int m_failCode = 0;
    Failing m_failing = Failing::Once;
    bool m_hasFailed = false;
    bool m_isOff = false;
};

/// The bytes behind a name, and those that are sure to be there after a cut.
struct PowerCutDisk::File {
    struct Pending {
        bool isLength;      ///< a new length, which is `offset`
        std::size_t offset; ///< of `bytes`
        std::string bytes;
    };

    std::string live;
    std::string durable;
    std::vector<Pending> pending; ///< what leads from durable to live
};

} // namespace coilbook::testing
