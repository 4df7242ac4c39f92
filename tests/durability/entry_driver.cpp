// Enters readings one after the other, as the bench does, until it is killed:
//     coilbook_entry_driver FILE
// Each reading is told on standard output, id and digits, once the session says that it is saved;
// after every third a spring is swapped.
#include "core/services/logbook_session.h"

#include <QCoreApplication>

#include <cstdio>

namespace {

using namespace coilbook;

class Driver : public QObject {
public:
    explicit Driver(const QString& path) {
        connect(&m_session, &LogbookSession::opened, this, [this] { chooseEngine(); });
        connect(&m_session, &LogbookSession::openFailed, this, &Driver::giveUp);
        connect(&m_session, &LogbookSession::failed, this, &Driver::giveUp);
        m_session.openLogbook(path);
    }

private:
    void giveUp(const Error& error) {
        std::fprintf(stderr, "failed: %s\n", qPrintable(error.detail));
        QCoreApplication::exit(1);
    }

    void chooseEngine() {
        m_engine = m_session.engines().front().id;
        connect(&m_session, &LogbookSession::logChanged, this, [this] {
            if (m_inspection.id.isNull() && m_session.log()) {
                startInspection(*m_session.log());
            }
        });
        m_session.selectEngine(m_engine);
    }

    void startInspection(const EngineLog& log) {
        m_spring = log.springs.front().id;
        m_entered = static_cast<int>(log.readings.size());
        m_inspection = {InspectionId::make(), m_engine, QDate(2026, 3, 1),
                        static_cast<int>(log.inspections.size()), false};
        m_sitting = {SittingId::make(), m_inspection.id, {}, QStringLiteral("Kim"), {}};
        m_session.apply(StartInspection{m_inspection, m_sitting}, this,
                        [this](const Result<void>& done) {
                            if (done) {
                                enterNext();
                            }
                        });
    }

    void enterNext() {
        Reading reading;
        reading.id = ReadingId::make();
        reading.sitting = m_sitting.id;
        reading.spring = m_spring;
        reading.place = {Cylinder(1), Valve::Intake};
        reading.hit = ++m_hit;
        // Tells how many came before it.
        reading.value = TypedForce(100000 + ++m_entered, 3, ForceUnit::PoundForce);
        m_session.saveDraft({m_engine, m_inspection.id, reading.place, reading.value.text()});
        m_session.apply(RecordReadings{{reading}, {}}, this,
                        [this, reading](const Result<void>& done) {
                            if (done) {
                                std::printf("%s %lld\n", qPrintable(reading.id.text()),
                                            static_cast<long long>(reading.value.digits()));
                                std::fflush(stdout);
                                if (m_hit % 3 == 0) {
                                    swap();
                                } else {
                                    enterNext();
                                }
                            }
                        });
    }

    /// Another spring at another place, told as `swap` and the id of the fitting.
    void swap() {
        FitSpring change;
        const SpringId fresh = SpringId::make();
        change.newSpring = Spring{fresh, QStringLiteral("N-") + fresh.text(), {}, {}, {}};
        change.fitting = {FittingId::make(),
                          m_engine,
                          fresh,
                          {Cylinder(2), Valve::Intake},
                          m_inspection.inspectedOn,
                          m_inspection.engineRaces,
                          {},
                          false};
        m_session.apply(change, this, [this, id = change.fitting.id](const Result<void>& done) {
            if (done) {
                std::printf("swap %s\n", qPrintable(id.text()));
                std::fflush(stdout);
                enterNext();
            }
        });
    }

    SystemClock m_clock;
    LogbookSession m_session{m_clock};
    EngineId m_engine;
    SpringId m_spring;
    Inspection m_inspection;
    Sitting m_sitting;
    int m_hit = 0;
    int m_entered = 0;
};

} // namespace

int main(int argc, char** argv) {
    const QCoreApplication application(argc, argv);
    const Driver driver(QCoreApplication::arguments().value(1));
    return QCoreApplication::exec();
}
