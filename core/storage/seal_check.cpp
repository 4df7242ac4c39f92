#include "core/storage/seal_check.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace coilbook::storage {

namespace {

constexpr qint64 kForEver = std::numeric_limits<qint64>::max();

SealContent contentIn(const QSqlQuery& query) {
    const auto bytes = [&](int column) {
        return QByteArray::fromHex(query.value(column).toString().toLatin1());
    };
    SealContent seal;
    seal.subject = query.value(1).toString();
    seal.record = query.value(2).isNull() ? QString() : query.value(2).toString();
    seal.rows = query.value(3).toLongLong();
    seal.content = bytes(4);
    seal.replaces = query.value(5).toLongLong();
    seal.replaced = bytes(6);
    return seal;
}

Finding findingOf(FindingKind kind, const QString& where, qint64 seal) {
    return {kind, where, {QString::number(seal)}, {}};
}

QString nameOfSeal(qint64 number) {
    return QStringLiteral("seal %1").arg(number);
}

} // namespace

SealCheck::Digest SealCheck::halfOf(const QByteArray& digest) {
    Digest half{};
    std::copy_n(digest.begin(), std::min(digest.size(), static_cast<qsizetype>(half.size())),
                half.begin());
    return half;
}

SealCheck::Link* SealCheck::linkAt(qint64 number) {
    // In a whole chain no number is left out.
    const qint64 index = number - m_base;
    if (index >= 0 && index < static_cast<qint64>(m_links.size()) &&
        m_links[static_cast<std::size_t>(index)].number == number) {
        return &m_links[static_cast<std::size_t>(index)];
    }
    const auto found =
        std::lower_bound(m_links.begin(), m_links.end(), number,
                         [](const Link& link, qint64 wanted) { return link.number < wanted; });
    return found == m_links.end() || found->number != number ? nullptr : &*found;
}

Result<void> SealCheck::readChain(const Connection& connection) {
    ChainEnd end;
    const auto onRow = [&](const QSqlQuery& query) -> Result<void> {
        const SealContent seal = contentIn(query);
        const qint64 number = query.value(0).toLongLong();
        const QString digest = query.value(7).toString();
        if (number != end.number + 1 || sealDigest(end, seal) != digest) {
            m_report.add(findingOf(FindingKind::BrokenChain, nameOfSeal(number), number));
        }
        end = {number, digest};
        addLink(number, seal);
        return {};
    };
    Result<void> read = connection.forEachRow(
        QStringLiteral("SELECT s.number, s.subject, s.record_id, s.row_count, s.content,"
                       " s.replaces, s.replaced, s.digest FROM seal s ORDER BY s.number"),
        {}, onRow);
    m_report.newestSeal = {end.number, end.digest};
    return read;
}

void SealCheck::addLink(qint64 number, const SealContent& seal) {
    Link link;
    link.number = number;
    link.content = halfOf(seal.content);
    const std::optional<SealBeginning> beginning = beginningNamed(seal.subject);
    if (beginning || seal.record.isNull()) {
        link.kind = beginning ? Kind::Beginning : Kind::Block;
        link.isDone = true;
        auto many = std::make_unique<Many>();
        many->subject = seal.subject;
        many->content = seal.content;
        many->rows = seal.rows;
        if (beginning) {
            m_report.beginnings.push_back({number, *beginning});
            if (*beginning == SealBeginning::Migrated || m_links.empty()) {
                beginAnew(number);
                m_isEmptyBase = seal.rows == 0;
            }
        }
        (beginning ? m_beginnings : m_blocks)[number] = std::move(many);
    } else {
        link.record = QUuid::fromString(seal.record);
        if (!seal.replaced.isEmpty()) {
            supersede(number, seal);
        }
    }
    m_links.push_back(link);
}

void SealCheck::beginAnew(qint64 number) {
    m_base = number;
    m_links.clear();
    m_blocks.clear();
    m_beginnings.clear();
    m_replaced.clear();
}

void SealCheck::supersede(qint64 number, const SealContent& seal) {
    Link* before = linkAt(seal.replaces);
    const bool isOfRow = before != nullptr && before->kind == Kind::Row;
    const bool fits = seal.replaces < number &&
                      (!isOfRow || (!before->isDone && before->content == halfOf(seal.replaced) &&
                                    before->record == QUuid::fromString(seal.record)));
    if (!fits) {
        m_report.add(findingOf(FindingKind::BrokenChain, nameOfSeal(number), number));
        return;
    }
    if (isOfRow) {
        before->isDone = true;
    }
    m_replaced.insert(number, {seal.replaces, seal.replaced});
}

void SealCheck::checkCurrent(Link& link, const QString& where, const QUuid& record,
                             const QByteArray& digest, bool isIntact) {
    if (!isIntact) {
        link.isDone = true;
        return;
    }
    if (link.isDone || link.record != record || link.content != halfOf(digest)) {
        m_report.add(findingOf(FindingKind::NotAsSealed, where, link.number));
    }
    link.isDone = true;
}

void SealCheck::addState(const QByteArray& digest, qint64 from, qint64 until) {
    for (auto& [number, all] : m_beginnings) {
        if (from < number && number < until) {
            all->hash.addData(digest);
            ++all->seen;
        }
    }
}

void SealCheck::addRow(const TableShape& shape, QByteArrayView id, const QByteArray& digest,
                       qint64 seal, bool isIntact) {
    const auto where = [&] {
        return shape.name + QLatin1Char(' ') + QString::fromUtf8(id);
    };
    QByteArray state = digest;
    qint64 until = kForEver;
    for (qint64 at = seal;;) {
        Link* link = at < m_base ? nullptr : linkAt(at);
        if (link == nullptr && (at >= m_base || m_isEmptyBase)) {
            m_report.add({FindingKind::NotSealed, where(), {}, {}});
            return;
        }
        addState(state, link == nullptr ? m_base - 1 : at, until);
        if (link == nullptr) {
            return;
        }
        if (link->kind != Kind::Row) {
            const auto block = m_blocks.find(at);
            if (block == m_blocks.end() || block->second->subject != shape.name) {
                m_report.add(findingOf(FindingKind::NotAsSealed, where(), at));
                return;
            }
            block->second->hash.addData(state);
            ++block->second->seen;
            return;
        }
        if (until == kForEver) {
            checkCurrent(*link, where(), QUuid::fromString(QLatin1String(id.data(), id.size())),
                         state, isIntact);
        }
        const auto replaced = m_replaced.constFind(at);
        if (replaced == m_replaced.constEnd()) {
            return;
        }
        until = at;
        at = replaced->seal;
        state = replaced->digest;
    }
}

void SealCheck::checkMany(FindingKind kind, qint64 number, const Many& many) {
    if (many.seen != many.rows || many.hash.result() != many.content) {
        m_report.add(
            {kind,
             nameOfSeal(number),
             {QString::number(number), QString::number(many.rows), QString::number(many.seen)},
             {}});
    }
}

Result<void> SealCheck::finish(const Connection& connection) {
    for (const auto& [number, all] : m_beginnings) {
        checkMany(FindingKind::AllNotAsSealed, number, *all);
    }
    for (const auto& [number, block] : m_blocks) {
        checkMany(FindingKind::BlockNotAsSealed, number, *block);
    }
    const QString sql =
        QStringLiteral("SELECT s.subject || ' ' || s.record_id FROM seal s WHERE s.number = ?");
    for (const Link& link : m_links) {
        if (link.isDone) {
            continue;
        }
        if (m_report.findings.size() == VerifyReport::kMostListed) {
            ++m_report.more;
            continue;
        }
        const Result<QVariant> where =
            connection.scalar(sql, {QVariant::fromValue<qlonglong>(link.number)});
        if (!where) {
            return tl::unexpected(where.error());
        }
        m_report.add(findingOf(FindingKind::SealedRowGone, where->toString(), link.number));
    }
    return {};
}

} // namespace coilbook::storage
