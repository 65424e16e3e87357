package rollbook.testing;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.jdbc.datasource.DelegatingDataSource;

/** Counts the SQL statements that the portal prepares, whatever thread does it. */
public class StatementCount implements BeanPostProcessor {
    private final AtomicInteger prepared = new AtomicInteger();

    /** @return how many statements were prepared while the action ran */
    public int during(Callable<?> action) throws Exception {
        int before = prepared.get();
        action.call();
        return prepared.get() - before;
    }

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        return bean instanceof DataSource dataSource && !(bean instanceof Counting) ? new Counting(dataSource) : bean;
    }

    private final class Counting extends DelegatingDataSource {
        Counting(DataSource target) {
            super(target);
        }

        @Override
        public Connection getConnection() throws java.sql.SQLException {
            Connection connection = super.getConnection();
            InvocationHandler counter = (proxy, method, args) -> {
                if (method.getName().equals("prepareStatement")
                        || method.getName().equals("createStatement")) {
                    prepared.incrementAndGet();
                }
                try {
                    return method.invoke(connection, args);
                } catch (InvocationTargetException e) {
                    throw e.getCause();
                }
            };
            return (Connection)
                    Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {Connection.class}, counter);
        }
    }
}
