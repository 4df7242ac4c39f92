#include "tests/durability/power_cut_disk.h"

#include "tests/durability/power_cut_vfs.h"

#include <QDir>
#include <QFile>

#include <algorithm>
#include <cstring>
#include <random>
#include <sqlite3.h>

namespace coilbook::testing {

namespace {

constexpr std::size_t kSector = 512;

PowerCutDisk* theDisk = nullptr;

void perform(const PowerCutDisk::File::Pending& change, std::string& bytes) {
    if (change.isLength) {
        bytes.resize(change.offset);
        return;
    }
    bytes.resize(std::max(bytes.size(), change.offset + change.bytes.size()));
    std::memcpy(&bytes[change.offset], change.bytes.data(), change.bytes.size());
}

std::shared_ptr<PowerCutDisk::File> settled(std::string bytes) {
    auto file = std::make_shared<PowerCutDisk::File>();
    file->live = bytes;
    file->durable = std::move(bytes);
    return file;
}

/// What is left of a file; `survives` is asked for each sector and each length.
template <class Survives>
std::string remainsOf(const PowerCutDisk::File& file, Survives survives) {
    std::string bytes = file.durable;
    for (const PowerCutDisk::File::Pending& change : file.pending) {
        if (change.isLength) {
            if (survives()) {
                perform(change, bytes);
            }
            continue;
        }
        for (std::size_t at = 0; at < change.bytes.size(); at += kSector) {
            if (survives()) {
                perform({false, change.offset + at, change.bytes.substr(at, kSector)}, bytes);
            }
        }
    }
    return bytes;
}

} // namespace

PowerCutDisk::PowerCutDisk(const QString& folder)
    : m_folder(folder)
    , m_prefix(QFile::encodeName(folder).toStdString() + '/') {
    Q_ASSERT(theDisk == nullptr);
    theDisk = this;
    installPowerCutVfs();
}

PowerCutDisk::~PowerCutDisk() {
    theDisk = nullptr;
    removePowerCutVfs();
}

PowerCutDisk* PowerCutDisk::holding(const char* path) {
    const bool isOurs =
        theDisk != nullptr && path != nullptr &&
        std::strncmp(path, theDisk->m_prefix.c_str(), theDisk->m_prefix.size() - 1) == 0;
    return isOurs ? theDisk : nullptr;
}

std::map<QString, std::string> PowerCutDisk::contents() const {
    std::map<QString, std::string> files;
    for (const auto& [path, file] : m_live) {
        files.emplace(QFile::decodeName(path.c_str()), file->live);
    }
    return files;
}

void PowerCutDisk::setContents(const std::map<QString, std::string>& files) {
    m_live.clear();
    for (const auto& [path, bytes] : files) {
        m_live.emplace(QFile::encodeName(path).toStdString(), settled(bytes));
    }
    m_durable = m_live;
    m_operations = 0;
    m_cutAt = 0;
    m_failAt = 0;
    m_hasFailed = false;
    m_isOff = false;
    mirrorNames();
}

QStringList PowerCutDisk::names() const {
    QStringList names;
    for (const auto& [path, file] : m_live) {
        names.append(QFile::decodeName(path.c_str()));
    }
    return names;
}

void PowerCutDisk::failAt(qint64 operation, int code, Failing failing) {
    m_failAt = operation;
    m_failCode = code;
    m_failing = failing;
}

void PowerCutDisk::powerOn(Survivors survivors, unsigned seed) {
    std::mt19937 random(seed);
    const auto survives = [&] {
        return survivors == Survivors::Everything ||
               (survivors == Survivors::ByChance && (random() & 1U) != 0);
    };
    std::map<QString, std::string> left;
    Names all = m_live;
    all.insert(m_durable.begin(), m_durable.end());
    for (const auto& [path, ignored] : all) {
        const auto live = m_live.find(path);
        const auto durable = m_durable.find(path);
        const std::shared_ptr<File> isThere = live == m_live.end() ? nullptr : live->second;
        const std::shared_ptr<File> wasThere =
            durable == m_durable.end() ? nullptr : durable->second;
        const std::shared_ptr<File>& file = isThere == wasThere || survives() ? isThere : wasThere;
        if (file) {
            left.emplace(QFile::decodeName(path.c_str()), remainsOf(*file, survives));
        }
    }
    setContents(left);
}

std::shared_ptr<PowerCutDisk::File> PowerCutDisk::find(const std::string& path) const {
    const auto found = m_live.find(path);
    return found == m_live.end() ? nullptr : found->second;
}

std::shared_ptr<PowerCutDisk::File> PowerCutDisk::create(const std::string& path) {
    if (!proceeds()) {
        return nullptr;
    }
    auto file = std::make_shared<File>();
    m_live[path] = file;
    mirrorNames();
    return file;
}

bool PowerCutDisk::proceeds() {
    if (m_isOff) {
        return false;
    }
    ++m_operations;
    m_isOff = m_cutAt > 0 && m_operations >= m_cutAt;
    return !m_isOff;
}

int PowerCutDisk::faultOfWrite() {
    if (m_failAt == 0 || m_operations < m_failAt) {
        return SQLITE_OK;
    }
    m_hasFailed = true;
    if (m_failing == Failing::Once) {
        m_failAt = 0;
    }
    return m_failCode;
}

int PowerCutDisk::write(File& file, const void* bytes, std::size_t count, std::size_t offset) {
    if (!proceeds()) {
        return SQLITE_IOERR_WRITE;
    }
    if (const int fault = faultOfWrite(); fault != SQLITE_OK) {
        return fault;
    }
    file.pending.push_back({false, offset, std::string(static_cast<const char*>(bytes), count)});
    perform(file.pending.back(), file.live);
    return SQLITE_OK;
}

int PowerCutDisk::truncate(File& file, std::size_t length) {
    if (!proceeds()) {
        return SQLITE_IOERR_TRUNCATE;
    }
    file.pending.push_back({true, length, {}});
    perform(file.pending.back(), file.live);
    return SQLITE_OK;
}

int PowerCutDisk::sync(File& file) {
    if (!proceeds()) {
        return SQLITE_IOERR_FSYNC;
    }
    file.durable = file.live;
    file.pending.clear();
    return SQLITE_OK;
}

int PowerCutDisk::syncNames() {
    if (!proceeds()) {
        return SQLITE_IOERR_DIR_FSYNC;
    }
    m_durable = m_live;
    return SQLITE_OK;
}

int PowerCutDisk::remove(const std::string& path, bool andSync) {
    if (!proceeds()) {
        return SQLITE_IOERR_DELETE;
    }
    if (m_live.erase(path) == 0) {
        return SQLITE_IOERR_DELETE_NOENT;
    }
    if (andSync) {
        m_durable = m_live;
    }
    mirrorNames();
    return SQLITE_OK;
}

int PowerCutDisk::rename(const std::string& from, const std::string& to) {
    if (!proceeds()) {
        return SQLITE_IOERR;
    }
    const auto found = m_live.find(from);
    if (found == m_live.end()) {
        return SQLITE_IOERR;
    }
    m_live[to] = found->second;
    m_live.erase(from);
    mirrorNames();
    return SQLITE_OK;
}

void PowerCutDisk::mirrorNames() const {
    const QDir folder(m_folder);
    const QStringList shown = folder.entryList(QDir::Files | QDir::Hidden);
    for (const QString& name : shown) {
        if (name.endsWith(QLatin1String(".lock"))) {
            continue; // of the processes that are running, not of the disk
        }
        const QString path = folder.filePath(name);
        if (m_live.count(QFile::encodeName(path).toStdString()) == 0) {
            removeRealName(QFile::encodeName(path).constData());
        }
    }
    for (const auto& [path, file] : m_live) {
        makeRealName(path.c_str());
    }
}

} // namespace coilbook::testing
